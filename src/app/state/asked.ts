import { useEffect, useState } from "react";
import { createSearchClient } from "../../../workers/client.ts";
import type { SearchClient } from "../../../workers/protocol.ts";
import type { Design } from "../../model/design.ts";
import { job, type Reading } from "./book.ts";

type Question<T> = (client: SearchClient, of: ReturnType<typeof job>, design: Design) => Promise<T>;

/**
 * Asks something of one design in a worker of its own, which ends with the answer: the other ones go on with what they
 * were asked. Remembered by what was read and the design itself (after an edit both are new objects); what failed is
 * asked again.
 */
const asking = <T>(question: Question<T>) => {
  const known = new WeakMap<Reading, WeakMap<Design, Promise<T>>>();
  const ask = async (reading: Reading, design: Design): Promise<T> => {
    const client = createSearchClient(1);
    try {
      return await question(client, job(reading.paper), design);
    } finally {
      client.dispose();
    }
  };
  return (reading: Reading, design: Design): Promise<T> => {
    const ofReading = known.get(reading) ?? new WeakMap<Design, Promise<T>>();
    known.set(reading, ofReading);
    const before = ofReading.get(design);
    if (before) return before;
    const answer = ask(reading, design);
    ofReading.set(design, answer);
    answer.catch(() => ofReading.delete(design));
    return answer;
  };
};

/** Null while it is worked out; "broken" where that failed. */
const useAsked = <T>(
  asked: (reading: Reading, design: Design) => Promise<T>,
  reading: Reading,
  design: Design,
): T | "broken" | null => {
  const [found, setFound] = useState<{ design: Design; answer: T | "broken" } | null>(null);
  useEffect(() => {
    let wanted = true;
    asked(reading, design)
      .catch(() => "broken" as const)
      .then((answer) => {
        if (wanted) setFound({ design, answer });
      });
    return () => {
      wanted = false;
    };
  }, [asked, reading, design]);
  return found?.design === design ? found.answer : null;
};

const askCures = asking((client, of, design) => client.cures(of, design));
/** What one step of each part would do to the checks of a design. */
export const useCures = (reading: Reading, design: Design) => useAsked(askCures, reading, design);

const askChance = asking((client, of, design) => client.chance(of, design));
/** How probable it is that the design misses a check. */
export const useChance = (reading: Reading, design: Design) => useAsked(askChance, reading, design);
