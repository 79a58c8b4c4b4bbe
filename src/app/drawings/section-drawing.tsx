import type { RuleSet, Section } from "../../model/catalog.ts";
import type { AngleMember } from "../../physics/steel/angle.ts";
import { isAngle, memberShape, thinned, wallOf, widthOf } from "../../physics/steel/member.ts";
import { roundScale } from "../plots/stairs.ts";
import { type Reading, useBook } from "../state/book.ts";
import { figure, fromUnits, inUnits, type System, said, small } from "../wording/figures.ts";
import { thickness } from "../wording/parts.ts";
import { asNew, sectionFigures, steelOf, thinning } from "../wording/section-figures.ts";
import { faceLines, joinedAt, legShape } from "./face-lines.ts";
import { line } from "./frame.ts";

/** A section across, one bay of it, one leg enlarged, and what it bears as its wall thins: all from its numbers. */
export const SectionDrawing = ({ section, reading }: { section: Section; reading: Reading }) => {
  const system = useBook((state) => state.system);
  return (
    <>
      <Across section={section} system={system} />
      {wallOf(section.leg) !== undefined && (
        <Leg section={section} system={system} steel={steelOf(reading)} />
      )}
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
  const wide = Math.max(widthOf(section.leg) * scale, 6);
  const wall = wallOf(section.leg);
  const { outreach } = memberShape(section.leg);
  const legs = corners(section.legs, side, 98, section.legs === 3 ? 108 : 96);
  const base = legs[0][1];
  const panel = Math.min((section.panel / section.face) * 40, 90);
  const bays = Math.max(2, Math.floor(180 / panel));
  const [left, right, top] = [230, 270, 20];
  const face = { left, right, top, panel, bays };
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
          {isAngle(section.leg) ? (
            <path
              d={legShape([x, y], [98, 96], wide, section.leg.thickness * scale, outreach * scale)}
              className="p l2"
            />
          ) : (
            <>
              <circle cx={x} cy={y} r={wide / 2} className="p l3" />
              {wall !== undefined && (
                <circle cx={x} cy={y} r={Math.max(wide / 2 - wall * scale, 1)} className="p l2" />
              )}
            </>
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
        {`face ${system === "us" ? `${figure(section.face, "size", "us", 2)} in` : small(section.face, system)}`}
      </text>
      <path
        d={`M${left} ${top - 8}V${top + bays * panel + 8}M${right} ${top - 8}V${top + bays * panel + 8}`}
        className="l3"
      />
      {faceLines(section.bracing, face).map((points) => (
        <path key={line(points)} d={line(points)} className="l1 n" />
      ))}
      {joinedAt(section.bracing, face).map(([x, y]) => (
        <circle key={y} cx={x} cy={y} r="2" className="p l1" />
      ))}
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

const Leg = ({ section, system, steel }: Props & { steel: RuleSet["steel"] }) => {
  const { leg } = section;
  const wall = wallOf(leg) ?? 0;
  const measured = section.measuredWall ?? wall;
  const figures = sectionFigures(section, steel);
  const fresh = sectionFigures(asNew(section), steel);
  // as computed: the loss is taken from the outside
  const area = (t: number) => memberShape(thinned(leg, t)).area;
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
        {isAngle(leg) ? (
          <CutAngle leg={leg} measured={measured} worn={worn} />
        ) : (
          <CutTube diameter={leg.diameter} wall={wall} measured={measured} worn={worn} />
        )}
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
interface Cut {
  readonly measured: number;
  readonly worn: boolean;
}
const [CX, CY, OUTER] = [92, 84, 74];

const CutTube = ({ diameter, wall, measured, worn }: Cut & { diameter: number; wall: number }) => {
  const scale = (2 * OUTER) / diameter;
  return (
    <>
      <circle cx={CX} cy={CY} r={OUTER} fill="url(#cut)" className="l3" />
      <circle cx={CX} cy={CY} r={OUTER - measured * scale} className="p l3" />
      {worn && <circle cx={CX} cy={CY} r={OUTER - wall * scale} className="n l1" strokeDasharray="4 3" />}
      <path d={`M${CX - 84} ${CY}H${CX + 84}M${CX} ${CY - 84}V${CY + 84}`} className="lq dd" />
    </>
  );
};

const CutAngle = ({ leg, measured, worn }: Cut & { leg: AngleMember }) => {
  const side = 2 * OUTER;
  const scale = side / leg.angle;
  const at = (thickness: number) => legShape([CX - OUTER, CY + OUTER], [CX, CY], side, thickness * scale, 0);
  return (
    <>
      <path d={at(measured)} fill="url(#cut)" className="l3" />
      {worn && <path d={at(leg.thickness)} className="n l1" strokeDasharray="4 3" />}
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
  const steel = steelOf(reading);
  const curve = thinning(section, steel);
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
  const here = section.measuredWall ?? wallOf(section.leg)!;
  const now = sectionFigures(section, steel);
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
              {`the wind bends it by ${figure(need, "moment", system)}, thrust comes on top`}
            </text>
          </>
        )}
        {now && (
          <>
            <circle cx={x(here)} cy={y(now.moment)} r="5" className="p l3" />
            <text x={x(here) - 8} y={y(now.moment) - 8} textAnchor="end" className="b halo">
              {`${said(now.moment, "moment", system)} at ${wallWords(here, system)}`}
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
