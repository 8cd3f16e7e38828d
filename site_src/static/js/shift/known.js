// What a rig's profile answers of the questions that cards ask, and which cards are for it.

const UNKNOWN = "unknown"; // of a rig in a run where nobody said, as calc.shift.laws has it

// Answers by question; what the profile does not say is absent.
export function known(questions, profile) {
  const answered = {};
  for (const { id, field, says, answers } of questions) {
    const value = profile?.[field];
    const answer = says ? says[value] : value;
    if (answers.includes(answer)) answered[id] = answer;
  }
  return answered;
}

// Whether nothing that is known of a rig speaks against a card or a step for these rigs.
export const mayFit = (fits, answered) =>
  Object.entries(fits).every(([question, answers]) => !(question in answered) || answers.includes(answered[question]));

// What is known of the rig now that speaks against a run: `standing` is the rig and what was known of it as the run began, `told` what the run
// goes by. Null where the rig is another; none where only more is known, of a rig chosen since too: such a run goes on.
export function unlike(standing, { id, answered, told }) {
  const [before, known] = JSON.parse(standing ?? "[]");
  if (!known || before && before !== id) return null;
  const went = Object.entries(known).filter(([question, answer]) => answered[question] !== answer);
  const other = Object.entries(answered).filter(([question, answer]) => ![answer, UNKNOWN, undefined].includes(told[question]));
  return [...new Set([...went, ...other].map(([question]) => question))];
}

// What is to be seen at a step; what goes for some rigs only is said where this is known to be one.
export const signOf = (step, answered) =>
  step.note_for && Object.entries(step.note_for).every(([question, answers]) => answers.includes(answered[question]))
    ? `${step.see} ${step.note}` : step.see;

// Answers by question in words, such as "PTO, two-stage".
export const inWords = (answered, words) =>
  Object.entries(answered).filter(([, answer]) => answer !== UNKNOWN).map(([question, answer]) => words.rig_answer[question][answer]).join(", ");
