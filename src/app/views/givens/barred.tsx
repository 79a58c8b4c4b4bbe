import type { Barred } from "../../../problem/barred.ts";
import { anchorKind, footingKind } from "../../../report/part-names.ts";
import { Given } from "../../parts/given.tsx";
import { type Part, Stated, type Values } from "../../parts/stated.tsx";
import { book, changeStudy, useBook } from "../../state/book.ts";
import { typedNumber } from "../../wording/given.ts";
import { sectionName, strandName } from "../../wording/parts.ts";
import { Kinds, useReading } from "./fields.tsx";

const ANCHOR_KINDS = (["deadman", "post", "screw", "rock-rod"] as const).map((value) => ({
  value,
  name: anchorKind(value, 2),
}));
const FOOTING_KINDS = (["block", "pad", "pier", "rock-pad"] as const).map((value) => ({
  value,
  name: footingKind(value),
}));

/** What a new entry may begin with: anchors on a side or anywhere, or a kind of base. */
const FIRST = [
  { value: "concrete", name: "concrete anchors", lists: { anchorKinds: ["deadman", "post"] } },
  ...ANCHOR_KINDS.map(({ value, name }) => ({ value, name, lists: { anchorKinds: [value] } })),
  { value: "any", name: "any anchor", lists: {} },
  ...FOOTING_KINDS.map(({ value, name }) => ({
    value: `base-${value}`,
    name: `${name} as the base`,
    lists: { footingKinds: [value] },
  })),
];

/** As the study's file has them: what is written back must not be a reading of it. */
const inFile = (): readonly unknown[] => book.get().history.present.study.parts?.barred ?? [];
const write = (barred: readonly unknown[], did: string) =>
  changeStudy(["parts", "barred"], barred.length > 0 ? barred : undefined, did);

/** What may not stand together, or not on a side of the mast: each entry with the lists that it needs one of. */
export const BarredThings = () => {
  const { barred = [] } = useReading().study.parts;
  return (
    <>
      <h3>What may not be built</h3>
      {barred.map((entry, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two entries may bear one name
        <Entry key={i} entry={entry} at={i} />
      ))}
      <Stated
        label="Bar something"
        shown={barred.length === 0 ? "nothing is barred" : "bar something else"}
        parts={[
          { key: "name", label: "Why, in a few words", start: "", example: "no concrete to the north" },
          { key: "what", label: "What is barred", start: "", options: FIRST },
          bearingPart("from", "On the side from", undefined),
          bearingPart("to", "clockwise to", undefined),
        ]}
        note="Bearings are degrees from north, for anchors alone; left empty it is barred on every side. Sections and strands are added to an entry when it stands."
        write={(values) => (values ? write([...inFile(), entryOf(values)], `barred: ${values.name}`) : [])}
      />
    </>
  );
};

const bearingPart = (key: string, label: string, start: number | undefined): Part => ({
  key,
  label,
  start: start === undefined ? "" : `${start}`,
  example: key === "from" ? "315" : "45",
  read: (text) => typedNumber(text, { unit: "°", min: 0 }),
  as: "number",
  optional: true,
});

/** A side needs both its ends: with one the reader says what is missing. */
const sideOf = ({ from, to }: Values) =>
  from === undefined && to === undefined ? {} : { side: { from, to } };

const entryOf = (values: Values) => ({
  name: values.name,
  ...FIRST.find(({ value }) => value === values.what)?.lists,
  ...sideOf(values),
});

const LISTS = ["anchorKinds", "anchors", "sections", "strands", "footingKinds", "footings"] as const;

const Entry = ({ entry, at }: { entry: Barred; at: number }) => {
  const { catalog } = useReading();
  const system = useBook((state) => state.system);
  const path = ["parts", "barred", at] as const;
  const { side } = entry;
  // the last list of an entry stays: a name alone bars nothing
  const stated = LISTS.filter((key) => entry[key] !== undefined).length + (side ? 1 : 0);
  const list = (
    key: (typeof LISTS)[number],
    label: string,
    rows: readonly { value: string; name: string }[],
  ) => (
    <Kinds
      path={[...path, key]}
      label={label}
      rows={rows}
      none={entry[key] === undefined || stated > 1}
      words={entry[key] === undefined ? "whichever" : undefined}
    />
  );
  const named = (rows: readonly { id: string; name: string }[]) =>
    rows.map((row) => ({ value: row.id, name: row.name }));
  return (
    <div className="set">
      <p>
        <Given
          label="Why it is barred"
          shown={entry.name}
          start={entry.name}
          width={190}
          read={(text) =>
            text.trim() ? { ok: true, text, si: 0 } : { ok: false, message: "Say why in a few words." }
          }
          write={({ text }, gesture) =>
            changeStudy([...path, "name"], text.trim(), "why it is barred", gesture)
          }
        />
        <button
          type="button"
          className="link"
          onClick={() =>
            write(
              inFile().filter((_, i) => i !== at),
              `no longer barred: ${entry.name}`,
            )
          }
        >
          allow it<span className="vh">: {entry.name}</span>
        </button>
      </p>
      {list("anchorKinds", "Kinds of anchor", ANCHOR_KINDS)}
      {list("anchors", "Anchors", named(catalog.anchors))}
      <Stated
        label={`Side of ${entry.name}`}
        shown={side ? `on the side from ${side.from}° clockwise to ${side.to}°` : "on every side"}
        parts={[bearingPart("from", "From", side?.from), bearingPart("to", "clockwise to", side?.to)]}
        note="Degrees from north, for anchors alone."
        remove={side && stated > 1 ? "On every side" : undefined}
        write={(values) =>
          changeStudy([...path, "side"], values && sideOf(values).side, "side that is barred")
        }
      />
      {!side && (
        <>
          {list(
            "sections",
            "Sections",
            catalog.sections.map((row) => ({ value: row.id, name: sectionName(row, system) })),
          )}
          {list(
            "strands",
            "Strand",
            catalog.strand.map((row) => ({ value: row.id, name: strandName(row, system) })),
          )}
          {list("footingKinds", "Kinds of base", FOOTING_KINDS)}
          {list("footings", "Footings", named(catalog.footings))}
        </>
      )}
    </div>
  );
};
