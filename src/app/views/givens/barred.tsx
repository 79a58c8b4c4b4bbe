import { useReading } from "./fields.tsx";

/** What the study's file bars, by the names it gives; written there, not here. */
export const BarredNames = () => {
  const { barred } = useReading().study.parts;
  return barred && <p>Barred: {barred.map(({ name }) => name).join("; ")}</p>;
};
