// Who looks: an operator without tools, or a technician.
import { chips } from "../shared/chips.js";
import { chosen } from "../shared/choices.js";

const ROLES = /** @type {const} */ (["operator", "technician"]);

export const chosenRole = () => ROLES.find((id) => id === chosen("role", null)) ?? ROLES[0];

export const roleChips = ({ legend, words, role, change }) => chips({
  name: "role", legend, value: role, change,
  choices: ROLES.map((id) => ({ id, label: words.role[id] })),
});
