import upperPasture from "../../catalog/studies/upper-pasture.json" with { type: "json" };
import type { StudyFile } from "./study.ts";

/** The study that is open at the first visit. As written: `parseStudy` checks. */
export const demoStudy = upperPasture as unknown as StudyFile;
