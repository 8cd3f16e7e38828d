"""What a rig's log costs as it grows: letting a file in, once and again, and its status, under the phone's own interpreter on this desk.

    python tests/bench/log.py [RECORDS]          10,000 where none is named
"""
import pathlib
import sys
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[2]))

from tests.conftest import Phone, runner
from tests.unit.bay.arrivals import let_in
from tests.unit.bay.logs import long_log


def main(count):
    made = long_log(count)
    half = made[: count // 2]
    for name, standing, files in (
        ("into an empty log", [], [made]),
        ("the same again", made, [made]),
        ("into its older half", half, [made]),
    ):
        [answer] = let_in([{"standing": standing, "files": files}])
        print(f"{name:20} {answer['ms']:7.0f} ms, {len(answer['asked'])} questions of {sum(answer['asked'])} records, {len(answer['kept'])} writes")
    phone = Phone()
    status = [record for record in made if record["kind"] in ("defect", "decision", "repair", "release", "withdrawn")]
    start = time.perf_counter()
    standing = runner(phone.call).unheld("bay.standing", "of_rig", records=status)
    print(f"{'status':20} {1000 * (time.perf_counter() - start):7.0f} ms, of {len(status)} records, {len(standing['defects'])} defects open")
    phone.close()


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 10_000)
