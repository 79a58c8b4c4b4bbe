import type { Axis } from "../../../model/axis.ts";
import { axisValues } from "../../../model/axis.ts";
import { Given } from "../../parts/given.tsx";
import type { Part } from "../../parts/stated.tsx";
import { changeStudy, useBook } from "../../state/book.ts";
import { rawBeforeLock } from "../../state/locks.ts";
import { valueAt } from "../../state/path.ts";
import { type Measure, type System, said } from "../../wording/figures.ts";
import { type Typed, typedAxis, typedNumber, typedQuantity } from "../../wording/given.ts";
import { axisWords } from "../../wording/givens.ts";

export type Path = readonly (string | number)[];

/** As the file has it where that is text in a unit, else from the number. */
export const written = (study: unknown, path: Path, si: number, dimension: Measure, system: System) => {
  const raw = valueAt(study, path);
  return typeof raw === "string" ? raw : said(si, dimension, system);
};

export const useReading = () => useBook((state) => state.reading)!;

interface QuantityProps {
  readonly path: Path;
  readonly dimension: Measure;
  readonly label: string;
  readonly prefix?: string;
  readonly suffix?: string;
  /** How it reads where nothing is stated; typed "none" or left empty it is taken out of the study. */
  readonly none?: string;
  readonly grain?: number;
}

/** A number with its unit, edited where it stands. */
export const Quantity = ({
  path,
  dimension,
  label,
  prefix = "",
  suffix = "",
  none,
  grain,
}: QuantityProps) => {
  const reading = useReading();
  const system = useBook((state) => state.system);
  const si = valueAt(reading.study, path) as number | undefined;
  const shown = si === undefined ? none! : `${prefix}${said(si, dimension, system)}${suffix}`;
  const empty = (text: string) => none !== undefined && /^\s*(none|any)?\s*$/i.test(text);
  return (
    <Given
      label={label}
      shown={shown}
      start={si === undefined ? "" : written(reading.paper.study, path, si, dimension, system)}
      read={(text): Typed =>
        empty(text) ? { ok: true, text: "", si: 0 } : typedQuantity(text, dimension, system)
      }
      write={({ text }, gesture) =>
        changeStudy(path, text || undefined, text ? `${label.toLowerCase()} ${text}` : none!, gesture)
      }
      grain={grain}
      stands={`The answer still stands for ${si === undefined ? none : said(si, dimension, system)}.`}
    />
  );
};

interface PartOf {
  readonly optional?: boolean;
  /** Its key in the file, where the field is known by another. */
  readonly at?: string;
  /** Where nothing is stated, SI. */
  readonly otherwise?: number;
}
/** Makes the fields of what is stated as one: each a quantity under `path`, as the file has it. */
export const useQuantityPart = (path: Path) => {
  const { paper, study } = useReading();
  const system = useBook((state) => state.system);
  return (
    key: string,
    label: string,
    dimension: Measure,
    example: string,
    { optional, at = key, otherwise }: PartOf = {},
  ): Part => {
    const own = [...path, at];
    const si = (valueAt(study, own) as number | undefined) ?? otherwise;
    return {
      key,
      label,
      example,
      optional,
      start: si === undefined ? "" : written(paper.study, own, si, dimension, system),
      read: (text) => typedQuantity(text, dimension, system),
    };
  };
};

interface PlainProps {
  readonly path: Path;
  readonly label: string;
  readonly shown: string;
  readonly unit?: string;
  readonly read?: (text: string) => Typed;
  /** As it is typed, where the number of the file is not. */
  readonly start?: string;
  /** May it be left out? Then what is said of that. */
  readonly none?: string;
}

/** A number that the file keeps without a unit: degrees, factors, stiffness. */
export const Plain = ({ path, label, shown, unit = "", read, start, none }: PlainProps) => {
  const value = valueAt(useReading().study, path);
  const empty = (text: string) => none !== undefined && /^\s*(none)?\s*$/i.test(text);
  return (
    <Given
      label={label}
      shown={shown}
      start={start ?? (typeof value === "number" ? `${value}${unit}` : "")}
      read={(text) =>
        empty(text) ? { ok: true, text: "", si: 0 } : read ? read(text) : typedNumber(text, { unit, min: 0 })
      }
      write={({ text, si }, gesture) =>
        changeStudy(
          path,
          text ? si : undefined,
          text ? `${label.toLowerCase()} ${text}${unit}` : none!,
          gesture,
        )
      }
      stands={`The answer still stands for ${shown}.`}
    />
  );
};

/** Yes or no. */
export const Tick = ({ path, label }: { path: Path; label: string }) => {
  const value = valueAt(useReading().study, path) === true;
  return (
    <label className="tick">
      <input
        type="checkbox"
        checked={value}
        onChange={(event) =>
          changeStudy(
            path,
            event.target.checked,
            `${label.toLowerCase()}: ${event.target.checked ? "yes" : "no"}`,
          )
        }
      />
      {label}
    </label>
  );
};

interface KindsProps {
  readonly path: Path;
  readonly label: string;
  readonly rows: readonly { readonly value: string | number; readonly name: string }[];
  /** Is "all" a word of the file for every row? */
  readonly all?: boolean;
  /** May none be ticked? Then the list is left out. */
  readonly none?: boolean;
  /** In place of the count. */
  readonly words?: string;
}

/** What the search may choose from a table: ticked or not, at least one. */
export const Kinds = ({ path, label, rows, all = false, none = false, words }: KindsProps) => {
  const value = valueAt(useReading().study, path) as "all" | readonly (string | number)[] | undefined;
  const chosen = value === "all" ? rows.map((row) => row.value) : (value ?? []);
  const put = (next: readonly (string | number)[]) => {
    const whole = all && next.length === rows.length;
    const given = whole ? "all" : next.length === 0 && none ? undefined : next;
    return changeStudy(path, given, `${label.toLowerCase()}: ${whole ? "all" : next.join(", ") || "none"}`);
  };
  const said = words ?? (chosen.length === rows.length ? "all" : `${chosen.length} of ${rows.length}`);
  return (
    <details className="kinds">
      <summary className="ed">
        {label}: {said}
      </summary>
      <fieldset>
        <legend className="vh">{label}</legend>
        {rows.map((row) => {
          const on = chosen.includes(row.value);
          const last = on && chosen.length === 1 && !none;
          return (
            <label key={row.value} className="tick">
              <input
                type="checkbox"
                checked={on}
                disabled={last}
                onChange={() =>
                  put(
                    rows
                      .map((one) => one.value)
                      .filter((one) => (one === row.value ? !on : chosen.includes(one))),
                  )
                }
              />
              {row.name}
              {last && <span className="quiet"> the last one stays</span>}
            </label>
          );
        })}
      </fieldset>
    </details>
  );
};

interface AxisProps {
  readonly path: Path;
  readonly label: string;
  /** Of the values; left out for degrees. */
  readonly dimension?: Measure;
  /** What the answer has here, to be held by one press. */
  readonly answer?: number;
}

/** Values that the search may choose from: one holds it, several free it. */
export const AxisField = ({ path, label, dimension, answer }: AxisProps) => {
  const reading = useReading();
  const system = useBook((state) => state.system);
  const axis = valueAt(reading.study, path) as Axis;
  const shown = dimension ? axisWords(axis, system) : degreeWords(axis);
  const held = axisValues(axis).length === 1;
  const read = (text: string): Typed =>
    dimension ? typedQuantity(text, dimension, system, { min: 0 }) : typedNumber(text, { unit: "°" });
  const file = (text: string) => (dimension ? text : Number(text));
  const put = (value: unknown, did: string) => changeStudy(path, value, did);
  return (
    <p>
      <Given
        label={label}
        shown={`${label} ${shown}${held ? ", held" : ""}`}
        start={shown}
        width={190}
        read={(text) => {
          const typed = typedAxis(text, read);
          return typed.ok ? { ok: true, text, si: 0 } : typed;
        }}
        write={({ text }, gesture) => {
          const typed = typedAxis(text, read);
          return typed.ok
            ? changeStudy(path, inFile(typed.value, file), `${label.toLowerCase()} ${text}`, gesture)
            : [];
        }}
      />
      {held ? (
        <button
          type="button"
          className="link"
          onClick={() => put(rawBeforeLock(path), `${label.toLowerCase()} free`)}
        >
          free<span className="vh"> {label}</span>
        </button>
      ) : (
        answer !== undefined && (
          <button
            type="button"
            className="link"
            onClick={() =>
              put(
                dimension ? said(answer, dimension, system, 4).replace(/[,\u2009]/g, "") : answer,
                `${label.toLowerCase()} held as in the answer`,
              )
            }
          >
            hold as in the answer<span className="vh"> {label}</span>
          </button>
        )
      )}
    </p>
  );
};

const inFile = (
  value: string | readonly string[] | { from: string; to: string; step: string },
  file: (text: string) => string | number,
): unknown => {
  if (typeof value === "string") return file(value);
  if ("from" in value) return { from: file(value.from), to: file(value.to), step: file(value.step) };
  return value.map(file);
};

const degreeWords = (axis: Axis): string => {
  if (typeof axis === "number") return `${axis}°`;
  if ("from" in axis) return `${axis.from} to ${axis.to} by ${axis.step}°`;
  return `${axis.join(", ")}°`;
};
