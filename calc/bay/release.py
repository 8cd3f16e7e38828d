"""What a repair must prove before a rig is back in service, and what a release still lacks."""
from calc.bay.records import is_name, plain

NOTHING = "nothing"  # opened: looked at again and found good
SEEN_AGAIN = ("check", "report")  # origins of a defect that may turn out to be none; what a rig did on a card or in a test did happen


def proofs(table, opened, defects):
    """The proof tests that what was opened brings with it, what was found not good in a check, and what the rig did.

    table: `{"opened", "after", "proofs"}` rows, proofs as ids in their order; each by what was opened or after what origin of
        a defect it is asked for, the other None
    opened: ids of what was opened
    defects: `{"origin", "item", "system"}` of each defect; item: of the check that found it, or None; system: what of the
        table the item is a part of, or None

    Returns ids, each once: the items found not good, then the rest in the table's order. Where nothing was opened, a system's
    tests are not asked for. Raises nothing.
    Source: common practice (what was opened is what may leak, slip or stick; what failed is tried again, whatever was opened;
    a rig that moved shows its shift and its parking brake, whatever the cause was).
    """
    answer = []
    for defect in defects:
        if defect["item"] is not None and defect["item"] not in answer:
            answer.append(defect["item"])
    origins = [defect["origin"] for defect in defects]
    brings = opened + [defect["system"] for defect in defects if defect["system"] is not None and NOTHING not in opened]
    for row in table:
        if row["opened"] in brings or row["after"] in origins:
            answer = answer + [proof for proof in row["proofs"] if proof not in answer]
    return answer


def lacks(table, entered):
    """What a release still lacks.

    table: as for proofs
    entered: `{"opened": ids, "defects": as for proofs, "passed": ids of proofs passed, "repaired_by", "by", "done"}`, names and text as typed

    Returns codes: opened, done, repaired_by, by, same_name, and for each proof not passed its id after "proof:". Where nothing
    was opened: reason in place of done, alone beside something that was, and happened where a defect is no check's or report's.
    None: it may go back. Raises nothing.
    Source: common practice (a defect that somebody saw may be looked at again; one that the rig showed is not argued away).
    """
    is_nothing = NOTHING in entered["opened"]
    answer = [] if entered["opened"] else ["opened"]
    if is_nothing and any([defect["origin"] not in SEEN_AGAIN for defect in entered["defects"]]):
        answer.append("happened")
    if is_nothing and len(entered["opened"]) > 1:
        answer.append("alone")
    if not entered["done"].strip():
        answer.append("reason" if is_nothing else "done")
    answer = answer + [field for field in ("repaired_by", "by") if not is_name(entered[field])]
    answer = answer + ["proof:" + proof for proof in proofs(table, entered["opened"], entered["defects"]) if proof not in entered["passed"]]
    if is_name(entered["by"]) and plain(entered["repaired_by"]) == plain(entered["by"]):
        answer.append("same_name")
    return answer
