"""Files let into logs by the site's own script, over calc on the phone's interpreter."""
import json
import subprocess
import tempfile

from site_src import compiled
from tests.conftest import ROOT, node


def let_in(cases):
    """What came of each of `{"standing": records, "files": [records, ...]}`, as tests/arrivals.mjs says it."""
    with tempfile.NamedTemporaryFile() as packed:
        packed.write(compiled.packed())
        packed.flush()
        run = subprocess.run([node(), ROOT / "tests" / "arrivals.mjs", packed.name], input=json.dumps(cases), capture_output=True, encoding="utf-8", check=False)
    assert run.returncode == 0, run.stderr
    return json.loads(run.stdout)
