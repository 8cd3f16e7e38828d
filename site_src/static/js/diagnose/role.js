// Who looks: an operator without tools, or a technician.
import { chips } from "../shared/chips.js";

export const roleChips = ({ legend, words, role, change }) => chips({
  name: "role", legend, value: role, change,
  choices: ["operator", "technician"].map((id) => ({ id, label: words.role[id] })),
});
