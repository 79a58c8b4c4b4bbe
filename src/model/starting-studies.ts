import hardGround from "../../catalog/studies/hard-ground.json" with { type: "json" };
import usedStack from "../../catalog/studies/used-stack.json" with { type: "json" };
import { demoStudy } from "./demo-study.ts";
import type { StudyFile } from "./study.ts";

/** One for each question that people bring; the first is the demo. As written: `parseStudy` checks. */
export const startingStudies: readonly { readonly id: string; readonly file: StudyFile }[] = [
  { id: "upper-pasture", file: demoStudy },
  { id: "used-stack", file: usedStack as unknown as StudyFile },
  { id: "hard-ground", file: hardGround as unknown as StudyFile },
];
