import type { Section } from "../../model/catalog.ts";
import { roundScale } from "../plots/stairs.ts";
import { type Reading, useBook } from "../state/book.ts";
import { figure, fromUnits, inUnits, type System, said, small } from "../wording/figures.ts";
import { thickness } from "../wording/parts.ts";
import { asNew, sectionFigures, thinning } from "../wording/section-figures.ts";
import { line } from "./frame.ts";

/** A section across, one bay of it, one leg enlarged, and what it bears as its wall thins: all from its numbers. */
export const SectionDrawing = ({ section, reading }: { section: Section; reading: Reading }) => {
  const system = useBook((state) => state.system);
  return (
    <>
      <Across section={section} system={system} />
      {section.leg.wall !== undefined && <Leg section={section} system={system} />}
      <Thinning section={section} system={system} reading={reading} />
    </>
  );
};

interface Props {
  readonly section: Section;
  readonly system: System;
}

const corners = (legs: 3 | 4, side: number, cx: number, cy: number): [number, number][] => {
  if (legs === 4) {
    const h = side / 2;
    return [
      [cx - h, cy + h],
      [cx + h, cy + h],
      [cx + h, cy - h],
      [cx - h, cy - h],
    ];
  }
  const rise = (side * Math.sqrt(3)) / 2;
  return [
    [cx - side / 2, cy + rise / 3],
    [cx + side / 2, cy + rise / 3],
    [cx, cy - (2 * rise) / 3],
  ];
};

const Across = ({ section, system }: Props) => {
  const side = 136;
  const scale = side / section.face;
  const radius = Math.max((section.leg.diameter * scale) / 2, 3);
  const legs = corners(section.legs, side, 98, section.legs === 3 ? 108 : 96);
  const base = legs[0][1];
  const wide = 40;
  const panel = Math.min((section.panel / section.face) * wide, 90);
  const bays = Math.max(2, Math.floor(180 / panel));
  const [left, right, top] = [230, 230 + wide, 20];
  const zig: [number, number][] = Array.from({ length: bays * 2 + 1 }, (_, i) => [
    i % 2 ? right : left,
    top + (i * panel) / 2,
  ]);
  return (
    <svg
      width="340"
      height="226"
      viewBox="0 0 340 226"
      role="img"
      aria-label="Section across, and a length of one face"
    >
      <path d={`${line(legs)}Z`} className="l2 n" />
      {legs.map(([x, y]) => (
        <g key={`${x},${y}`}>
          <circle cx={x} cy={y} r={radius} className="p l3" />
          {section.leg.wall !== undefined && (
            <circle cx={x} cy={y} r={Math.max(radius - section.leg.wall * scale, 1)} className="p l2" />
          )}
        </g>
      ))}
      <path
        d={`M${legs[0][0]} ${base + 26}H${legs[1][0]}`}
        className="l1"
        markerStart="url(#tick)"
        markerEnd="url(#tick)"
      />
      <path
        d={`M${legs[0][0]} ${base + 10}V${base + 31}M${legs[1][0]} ${base + 10}V${base + 31}`}
        className="lq"
      />
      <text x={98} y={base + 20} textAnchor="middle" className="halo">
        face {system === "us" ? `${figure(section.face, "size", "us", 2)} in` : small(section.face, system)}
      </text>
      <path
        d={`M${left} ${top - 8}V${top + bays * panel + 8}M${right} ${top - 8}V${top + bays * panel + 8}`}
        className="l3"
      />
      <path d={line(zig)} className="l1 n" />
      {section.bracing.pattern === "x" && (
        <path d={line(zig.map(([x, y]) => [x === left ? right : left, y]))} className="l1 n" />
      )}
      <path
        d={`M${right + 20} ${top}V${top + panel}`}
        className="l1"
        markerStart="url(#tick)"
        markerEnd="url(#tick)"
      />
      <text x={right + 28} y={top + panel / 2 + 4}>
        {small(section.panel, system)}
      </text>
    </svg>
  );
};

const Leg = ({ section, system }: Props) => {
  const { diameter, wall = 0 } = section.leg;
  const measured = section.measuredWall ?? wall;
  const scale = 148 / diameter;
  const [cx, cy, outer] = [92, 84, 74];
  const inner = outer - measured * scale;
  const figures = sectionFigures(section);
  const fresh = sectionFigures(asNew(section));
  const area = (t: number) => (Math.PI / 4) * (diameter ** 2 - (diameter - 2 * t) ** 2);
  const worn = section.measuredWall !== undefined;
  return (
    <>
      <h2>One leg{worn ? <small>dashed: as new</small> : null}</h2>
      <svg
        width="340"
        height="170"
        viewBox="0 0 340 170"
        role="img"
        aria-label="One leg enlarged, its wall hatched"
      >
        <circle cx={cx} cy={cy} r={outer} fill="url(#cut)" className="l3" />
        <circle cx={cx} cy={cy} r={inner} className="p l3" />
        {worn && <circle cx={cx} cy={cy} r={outer - wall * scale} className="n l1" strokeDasharray="4 3" />}
        <path d={`M${cx - 84} ${cy}H${cx + 84}M${cx} ${cy - 84}V${cy + 84}`} className="lq dd" />
        <text x="186" y="40">
          {worn ? "measured wall " : "wall "}
          <tspan className="b">{wallWords(measured, system)}</tspan>
        </text>
        {worn && (
          <text x="186" y="60" className="s">
            as new {wallWords(wall, system)}
          </text>
        )}
        <text x="186" y="88">
          area <tspan className="b">{said(area(measured), "sectionArea", system)}</tspan>
          {worn && <tspan className="s"> was {figure(area(wall), "sectionArea", system)}</tspan>}
        </text>
        {figures && (
          <text x="186" y="108">
            leg bears <tspan className="b">{said(figures.leg, "force", system)}</tspan>
          </text>
        )}
        {worn && fresh && (
          <text x="186" y="126" className="s">
            was {figure(fresh.leg, "force", system)}
          </text>
        )}
      </svg>
    </>
  );
};
const wallWords = (si: number, system: System) =>
  system === "us" ? `${thickness(si, "us").replace(/^\./, "0.")} in` : said(si, "size", "si", 2);

/** The greatest moment that the present answer lays on this section; null where it isn't in it. */
const asked = (section: Section, reading: Reading, finding: ReturnType<typeof useFinding>): number | null => {
  if (finding.state !== "ended" || finding.reading !== reading || finding.outcome.status !== "proven")
    return null;
  const { design, verdict } = finding.outcome.best;
  if (!design.stack.some((part) => part.section === section.id)) return null;
  return Math.max(0, ...verdict.cases.flatMap((load) => load.moment.map(Math.abs)));
};
const useFinding = () => useBook((state) => state.finding);

const Thinning = ({ section, system, reading }: Props & { reading: Reading }) => {
  const finding = useFinding();
  const curve = thinning(section);
  const need = asked(section, reading, finding);
  if (curve.length < 2) return null;
  const [left, right, top, bottom] = [46, 332, 12, 128];
  const most = Math.max(...curve.map((point) => point.moment), need ?? 0) * 1.1;
  const ticks = roundScale(0, inUnits(most, "moment", system), 4)
    .map((value) => fromUnits(value, "moment", system))
    .filter((value) => value <= most);
  const [thin, thick] = [curve[0].wall, curve.at(-1)!.wall];
  const x = (wall: number) => left + ((wall - thin) / (thick - thin)) * (right - left);
  const y = (moment: number) => bottom - (moment / most) * (bottom - top);
  const here = section.measuredWall ?? section.leg.wall!;
  const now = sectionFigures(section);
  return (
    <>
      <h2>
        What it bears as the wall thins<small>without thrust</small>
      </h2>
      <svg
        width="340"
        height="158"
        viewBox="0 0 340 158"
        role="img"
        aria-label="Moment that the section bears against its leg wall"
      >
        {ticks.map((value) => (
          <g key={value}>
            <path d={`M${left} ${y(value)}H${right}`} className="l0" />
            <text x={left - 6} y={y(value) + 4} textAnchor="end" className="s">
              {figure(value, "moment", system)}
            </text>
          </g>
        ))}
        <path d={line(curve.map((point) => [x(point.wall), y(point.moment)]))} className="l3 n" />
        {need !== null && (
          <>
            <path d={`M${left} ${y(need)}H${right}`} className="l3" strokeDasharray="6 4" />
            <text x={right} y={y(need) + 15} textAnchor="end" className="halo">
              the wind bends it by {figure(need, "moment", system)}, thrust comes on top
            </text>
          </>
        )}
        {now && (
          <>
            <circle cx={x(here)} cy={y(now.moment)} r="5" className="p l3" />
            <text x={x(here) - 8} y={y(now.moment) - 8} textAnchor="end" className="b halo">
              {said(now.moment, "moment", system)} at {wallWords(here, system)}
            </text>
          </>
        )}
        <path d={`M${left} ${top}V${bottom}H${right}`} className="l2 n" />
        <text x={left} y={bottom + 16} textAnchor="middle" className="s">
          {wallWords(thin, system)}
        </text>
        <text x={right} y={bottom + 16} textAnchor="end" className="s">
          {wallWords(thick, system)}
        </text>
      </svg>
    </>
  );
};
