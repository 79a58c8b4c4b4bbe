import type { StudyFile } from "../../../model/study.ts";
import { Stated } from "../../parts/stated.tsx";
import { book, change, type Fault, useBook } from "../../state/book.ts";
import { withValue } from "../../state/path.ts";
import { said } from "../../wording/figures.ts";
import { typedQuantity } from "../../wording/given.ts";
import { useReading } from "./fields.tsx";

const LAYERED = "layers-here";

/** Another soil of the catalog below a depth: a row of the study's own, made of the two. */
export const Layers = () => {
  const { study, catalog } = useReading();
  const system = useBook((state) => state.system);
  const soil = catalog.soils.find((row) => row.id === study.site.soil);
  const layers = soil?.layers ?? [];
  const options = catalog.soils
    .filter((row) => !row.layers && row.values === soil?.values)
    .map((row) => ({ value: row.id, name: row.name }));
  return (
    <Stated
      label="Layers of the ground"
      shown={
        layers.length === 0
          ? "the same soil all the way down"
          : layers
              .map(
                ({ from, bearing }) =>
                  `from ${said(from, "length", system)} down ${said(bearing, "pressure", system)}`,
              )
              .join(", ")
      }
      parts={[
        { key: "above", label: "Above", start: layers.length === 0 ? study.site.soil : "", options },
        {
          key: "from",
          label: "Down to",
          start: "",
          read: (text) => typedQuantity(text, "length", system),
          example: "4 ft",
        },
        { key: "below", label: "Below that", start: "", options },
      ]}
      note="More layers than two are written in the study’s file."
      write={(values) => (values ? layered(`${values.above}`, `${values.from}`, `${values.below}`) : [])}
    />
  );
};

const layered = (above: string, from: string, below: string): readonly Fault[] => {
  const { present } = book.get().history;
  const rows = [...(present.study.catalog?.soils ?? []), ...(present.catalog.soils ?? [])];
  const of = (id: string) => rows.find((row) => row.id === id);
  const [upper, lower] = [of(above), of(below)];
  if (!upper || !lower) return [{ path: "site.soil", message: "Both soils must be rows of the catalog." }];
  const { id: _, name, values: __, source: ___, layers: ____, ...layer } = lower;
  const row = {
    ...upper,
    id: LAYERED,
    name: `${upper.name} over ${name.toLowerCase()}`,
    layers: [{ from, ...layer }],
  };
  const others = (present.study.catalog?.soils ?? []).filter(({ id }) => id !== LAYERED);
  const withRow = withValue(
    { ...present.study, catalog: present.study.catalog ?? {} },
    ["catalog", "soils"],
    [...others, row],
  );
  return change(
    { ...present, study: withValue(withRow, ["site", "soil"], LAYERED) as StudyFile },
    `${row.name} from ${from} down`,
  );
};
