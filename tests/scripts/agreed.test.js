// What the bay's scripts say of a name and of an answer is what calc says: tests/unit/bay/test_agreed.py reads the same table.
import { expect, test } from "bun:test";

import { isName, isWhole } from "../../site_src/static/js/bay/agreed.js";
import agreed from "../agreed.json";

const RULES = { is_name: isName, is_whole: isWhole };

for (const [name, cases] of Object.entries(agreed)) {
  test.each(cases)(`${name} %j`, (given, expected) => expect(RULES[name](given)).toBe(expected));
}
