import { z } from "zod";
import { RunSetupSchema } from "@/lib/setup";
import { imperfections, patterns, places, stretches } from "@/lib/trade";
import { DiagnoseInputSchema } from "./input";
import { causes } from "./tables/causes";
import { questions } from "./tables/questions";
import { symptoms } from "./tables/symptoms";

/** JSON Schema (draft 2020-12) of what `diagnose` takes. */
export function diagnoseJsonSchema(): object {
  return z.toJSONSchema(DiagnoseInputSchema, { io: "input" });
}

/** Every word the door for machines understands; `readings` are the set-up's fields as JSON Schema. */
export function diagnoseVocabulary() {
  return {
    readings: z.toJSONSchema(RunSetupSchema, { io: "input" }).properties ?? {},
    imperfections: Object.values(imperfections).map(({ id, name, alsoCalled, look }) => ({
      id,
      name,
      alsoCalled,
      look,
    })),
    places,
    stretches,
    patterns,
    causes: causes.map(({ id, name, processes }) => ({ id, name, processes })),
    questions: [
      ...questions.map(({ id, question, answers }) => ({
        id,
        question,
        answers: answers.map((answer) => ({ id: answer.id, text: answer.text })),
      })),
      ...symptoms.map(({ id, question }) => ({
        id,
        question,
        answers: [
          { id: "yes", text: "Yes" },
          { id: "no", text: "No" },
          { id: "unsure", text: "Not sure" },
        ],
      })),
    ],
  };
}
