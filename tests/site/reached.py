"""Which functions of calc an answer on the phone can run: followed by name from the doors that its scripts open."""
import ast

import build
from calc import phone
from site_src.content import reckoners

CALC = build.ROOT / "calc"
SCRIPTS = build.ROOT / "site_src" / "static" / "js"


def opened():
    """The functions behind the doors that a script of the phone asks for, such as "hydraulics.hose.friction_loss_psi"."""
    text = "".join(path.read_text(encoding="utf-8") for path in SCRIPTS.rglob("*.js"))
    named = {door for door in phone.DOORS if f'"{door}"' in text}
    by_page = {f"supply.{page}_answer.answer" for page in reckoners.PAGES} if "water_page.answer" in named else set()
    return {f"{phone.DOORS[door][0]}.{door.partition('.')[2]}" for door in named} | by_page


def module_of(path):
    """The name of a module below calc, such as "hydraulics.hose"."""
    return ".".join(path.relative_to(CALC).with_suffix("").parts)


def parts(path):
    """Functions, classes and methods of a file as {"room.module.name": node}, and what else stands at its top."""
    module = module_of(path)
    tree = ast.parse(path.read_text(encoding="utf-8"))
    defined, rest = {}, []
    for node in tree.body:
        if isinstance(node, ast.FunctionDef):
            defined[f"{module}.{node.name}"] = [node]
        elif isinstance(node, ast.ClassDef):
            methods = [each for each in node.body if isinstance(each, ast.FunctionDef)]
            defined.update({f"{module}.{node.name}.{each.name}": [each] for each in methods})
            defined[f"{module}.{node.name}"] = [*node.bases, *(each for each in methods if each.name.startswith("__"))]
        else:
            rest.append(node)
    return tree, defined, rest


def imports(tree):
    """What names stand for in a file: {"hoses": "hydraulics.hose", "CalcError": "base.errors.CalcError"}."""
    meant = {}
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and node.module and node.module.split(".")[0] == "calc":
            above = node.module.removeprefix("calc").removeprefix(".")
            meant.update({alias.asname or alias.name: ".".join(part for part in (above, alias.name) if part) for alias in node.names})
    return meant


def functions(doors):
    """All that can be run from these doors, as {"hydraulics.branch.Outlet.flow_gpm", ...}. A method counts once its class and a call of its name do."""
    files = {module_of(path): parts(path) for path in CALC.rglob("*.py")}
    defined = {name: (nodes, module) for module, (_, some, _) in files.items() for name, nodes in some.items()}
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
        waiting += [each for each in defined if each.count(".") == 3 and each.rpartition(".")[0] in reached and each.rpartition(".")[2] in called]
    return {name for name in reached if not name.endswith(".")}
