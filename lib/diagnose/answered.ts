import { questions } from "./tables/questions";
import { symptoms } from "./tables/symptoms";

/** A question that was answered, in words. */
export interface Answered {
  readonly id: string;
  readonly question: string;
  readonly answer: string;
}

const symptomAnswers: Readonly<Record<string, string>> = { yes: "Yes", no: "No", unsure: "Not sure" };

/** The answers in the order they were given; one to a question that is not asked any more is left out. */
export function answeredWords(answers: Readonly<Record<string, string>>): readonly Answered[] {
  return Object.entries(answers).flatMap(([id, answerId]): readonly Answered[] => {
    const symptom = symptoms.find((row) => row.id === id);
    if (symptom) return [{ id, question: symptom.question, answer: symptomAnswers[answerId] ?? answerId }];
    const row = questions.find((one) => one.id === id);
    const answer = row?.answers.find((one) => one.id === answerId);
    return row && answer ? [{ id, question: row.question, answer: answer.text }] : [];
  });
}
