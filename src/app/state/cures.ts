import { useEffect, useState } from "react";
import { createSearchClient } from "../../../workers/client.ts";
import type { Design } from "../../model/design.ts";
import type { Cure } from "../../search/cures.ts";
import { job, type Reading } from "./book.ts";

/** By what was read and the design itself: after an edit both are new objects. What failed is asked again. */
const known = new WeakMap<Reading, WeakMap<Design, Promise<readonly Cure[]>>>();

/** In a worker of its own, which ends with the answer: the other ones go on with what they were asked. */
const ask = async (reading: Reading, design: Design): Promise<readonly Cure[]> => {
  const client = createSearchClient(1);
  try {
    return await client.cures(job(reading.paper), design);
  } finally {
    client.dispose();
  }
};

const asked = (reading: Reading, design: Design): Promise<readonly Cure[]> => {
  const ofReading = known.get(reading) ?? new WeakMap<Design, Promise<readonly Cure[]>>();
  known.set(reading, ofReading);
  const before = ofReading.get(design);
  if (before) return before;
  const answer = ask(reading, design);
  ofReading.set(design, answer);
  answer.catch(() => ofReading.delete(design));
  return answer;
};

/** Null while they are worked out; "broken" where that failed. */
export const useCures = (reading: Reading, design: Design): readonly Cure[] | "broken" | null => {
  const [found, setFound] = useState<{ design: Design; cures: readonly Cure[] | "broken" } | null>(null);
  useEffect(() => {
    let wanted = true;
    asked(reading, design)
      .catch(() => "broken" as const)
      .then((cures) => {
        if (wanted) setFound({ design, cures });
      });
    return () => {
      wanted = false;
    };
  }, [reading, design]);
  return found?.design === design ? found.cures : null;
};
