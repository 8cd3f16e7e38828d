"""What a repair must prove before a rig is back in service, and what a release still lacks."""
from calc.bay.records import is_name, plain


def proofs(table, opened, checked):
    """The proof tests that what was opened brings with it, and what was found not good in a check.

    table: `{"opened", "proofs"}` rows, proofs as ids in their order
    opened: ids of what was opened
    checked: `{"item", "system"}` of each defect that a check found; system: what of the table the item is a part of, or None

    Returns ids, each once: the items found not good, then the rest in the table's order. Raises nothing.
    Source: common practice (what was opened is what may leak, slip or stick; what failed is tried again, whatever was opened).
    """
    answer = []
    for row in checked:
        if row["item"] not in answer:
            answer.append(row["item"])
    systems = [row["system"] for row in checked]
    for row in table:
        if row["opened"] in opened or row["opened"] in systems:
            answer = answer + [proof for proof in row["proofs"] if proof not in answer]
    return answer


def lacks(table, entered):
    """What a release still lacks.

    table: as for proofs
    entered: `{"opened": ids, "checked": as for proofs, "passed": ids of proofs passed, "repaired_by", "by", "done"}`, names and text as typed

    Returns codes: opened, done, repaired_by, by, same_name, and for each proof not passed its id after "proof:". None: it may
    go back. Raises nothing.
    """
    answer = [field for field in ("opened", "done") if not entered[field]]
    answer = answer + [field for field in ("repaired_by", "by") if not is_name(entered[field])]
    answer = answer + ["proof:" + proof for proof in proofs(table, entered["opened"], entered["checked"]) if proof not in entered["passed"]]
    if is_name(entered["by"]) and plain(entered["repaired_by"]) == plain(entered["by"]):
        answer.append("same_name")
    return answer
