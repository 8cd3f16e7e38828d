"""What a repair must prove before a rig is back in service, and what a release still lacks."""
from calc.bay.records import plain


def proofs(table, opened):
    """The proof tests that what was opened brings with it.

    table: `{"opened", "proofs"}` rows, proofs as ids in their order
    opened: ids of what was opened

    Returns ids, each once, in the table's order. Raises nothing.
    Source: common practice (what was opened is what may leak, slip or stick).
    """
    answer = []
    for row in table:
        if row["opened"] in opened:
            answer = answer + [proof for proof in row["proofs"] if proof not in answer]
    return answer


def lacks(table, entered):
    """What a release still lacks.

    table: as for proofs
    entered: `{"opened": ids, "passed": ids of proofs passed, "repaired_by", "by", "done"}`, names and text as typed

    Returns codes: opened, done, repaired_by, by, same_name, and for each proof not passed its id after "proof:". None: it may
    go back. Raises nothing.
    """
    answer = [field for field in ("opened", "done", "repaired_by", "by") if not entered[field]]
    answer = answer + ["proof:" + proof for proof in proofs(table, entered["opened"]) if proof not in entered["passed"]]
    if plain(entered["repaired_by"]) and plain(entered["repaired_by"]) == plain(entered["by"]):
        answer.append("same_name")
    return answer
