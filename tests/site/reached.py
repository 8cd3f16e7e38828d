"""Which functions of calc an answer on the phone can run: followed by name from the doors that its scripts open."""
import ast

import build
from calc import phone
from site_src import reckoners

CALC = build.ROOT / "calc"
SCRIPTS = build.ROOT / "site_src" / "static" / "js"


def opened():
    """The doors that a script of the phone asks for."""
    text = "".join(path.read_text(encoding="utf-8") for path in SCRIPTS.rglob("*.js"))
    by_page = {f"{page}_reading.answer" for page in reckoners.PAGES} if "_reading.answer`" in text else set()
    return {door for door in phone.DOORS if f'"{door}"' in text} | (by_page & set(phone.DOORS))


def parts(path):
    """Functions, classes and methods of a file as {"module.name": node}, and what else stands at its top."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    defined, rest = {}, []
    for node in tree.body:
        if isinstance(node, ast.FunctionDef):
            defined[f"{path.stem}.{node.name}"] = [node]
        elif isinstance(node, ast.ClassDef):
            methods = [each for each in node.body if isinstance(each, ast.FunctionDef)]
            defined.update({f"{path.stem}.{node.name}.{each.name}": [each] for each in methods})
            defined[f"{path.stem}.{node.name}"] = [*node.bases, *(each for each in methods if each.name.startswith("__"))]
        else:
            rest.append(node)
    return tree, defined, rest


def imports(tree):
    """What names stand for in a file: {"lays": "lay", "CalcError": "errors.CalcError"}."""
    meant = {}
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and node.module and node.module.split(".")[0] == "calc":
            above = node.module.removeprefix("calc").removeprefix(".")
            meant.update({alias.asname or alias.name: ".".join(part for part in (above, alias.name) if part) for alias in node.names})
    return meant


def functions(doors):
    """All that can be run from these doors, as {"tree.Outlet.flow_gpm", ...}. A method counts once its class and a call of its name do."""
    files = {path.stem: parts(path) for path in CALC.glob("*.py")}
    defined = {name: (nodes, name.split(".")[0]) for _, some, _ in files.values() for name, nodes in some.items()}
    tops = {f"{module}.": (rest, module) for module, (_, _, rest) in files.items()}
    meant = {module: imports(tree) for module, (tree, _, _) in files.items()}
    reached, called, waiting = set(), set(), list(doors)
    while waiting:
        name = waiting.pop()
        if name in reached or name not in defined | tops:
            continue
        reached.add(name)
        nodes, module = (defined | tops)[name]
        waiting += [f"{module}.", name.rpartition(".")[0]]
        for node in (each for top in nodes for each in ast.walk(top)):
            if isinstance(node, ast.Name):
                waiting += [f"{module}.{node.id}", meant[module].get(node.id, "")]
            elif isinstance(node, ast.Attribute):
                called.add(node.attr)
                if isinstance(node.value, ast.Name):
                    waiting.append(f"{meant[module].get(node.value.id, '')}.{node.attr}")
        waiting += [each for each in defined if each.count(".") == 2 and each.rpartition(".")[0] in reached and each.rpartition(".")[2] in called]
    return {name for name in reached if not name.endswith(".")}
