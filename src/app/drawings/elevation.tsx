import { useMemo, useRef } from "react";
import type { Catalog } from "../../model/catalog.ts";
import type { Study } from "../../model/study.ts";
import { levelNames } from "../../report/names.ts";
import type { Judged } from "../../search/types.ts";
import { SaveSvg } from "../parts/save-svg.tsx";
import { demandOfCapacity } from "../wording/check.ts";
import { figure, type System, said } from "../wording/figures.ts";
import { Balloons } from "./balloons.tsx";
import { exaggeration, type Frame, frameOf } from "./frame.ts";
import { Anchors, Footing, RadiusDimension, Soil } from "./ground.tsx";
import { Guys, LevelLabels } from "./guys.tsx";
import { Lens } from "./lens.tsx";
import { Moment, Reactions, Wind } from "./loads.tsx";
import { Antennas, GoverningStretch, MastLines, Sway } from "./mast.tsx";
import { type Scene, sceneOf } from "./scene.ts";

interface Props {
  readonly judged: Judged;
  readonly study: Study;
  readonly catalog: Catalog;
  readonly width: number;
  readonly system: System;
  /** The check pointed at elsewhere on the page. */
  readonly pointed?: string | null;
}

/** The mast to scale, seen across the wind that governs. A design that fails is crossed from corner to corner. */
export const Elevation = ({ judged, study, catalog, width, system, pointed = null }: Props) => {
  const scene = useMemo(() => sceneOf(judged, study, catalog), [judged, study, catalog]);
  const frame = useMemo(() => frameOf(scene, width, system), [scene, width, system]);
  const sway = scene.load ? Math.max(0, ...scene.load.along.map(Math.abs)) : 0;
  const factor = exaggeration(sway, frame.scale, frame.narrow ? 24 : 50);
  const number = scene.numbered.find(({ check }) => check === scene.governs)?.number ?? null;
  const paper = useRef<SVGSVGElement>(null);
  const shared = { scene, frame, system };
  return (
    <>
      <svg
        ref={paper}
        width={frame.width}
        height={frame.height}
        viewBox={`0 0 ${frame.width} ${frame.height}`}
        role="img"
        aria-label={spoken(scene, system)}
      >
        <Levels frame={frame} system={system} />
        <Soil {...shared} />
        <Wind {...shared} />
        <Guys {...shared} />
        <Anchors {...shared} />
        <Footing {...shared} />
        <MastLines scene={scene} frame={frame} />
        <Sway {...shared} factor={factor} words={swayWords(sway, factor, system)} />
        <GoverningStretch scene={scene} frame={frame} />
        <Antennas
          scene={scene}
          frame={frame}
          label={(item, height) =>
            `${item.antenna?.name ?? "antennas"} ${said(item.area, "area", system)} at ${figure(height, "length", system)}`
          }
        />
        <LevelLabels {...shared} names={levelNames(scene.levels.length)} />
        <Moment {...shared} number={number} />
        <Reactions {...shared} />
        <RadiusDimension {...shared} />
        <Lens {...shared} words={scene.governs ? demandOfCapacity(scene.governs, system) : ""} />
        <Balloons scene={scene} frame={frame} paper={paper} pointed={pointed} />
        {!judged.verdict.passes && (
          <path
            d={`M0 0L${frame.width} ${frame.height}M${frame.width} 0L0 ${frame.height}`}
            className="l4 crossed"
            data-crossed="true"
          />
        )}
      </svg>
      <SaveSvg svg={paper} name="elevation" />
    </>
  );
};

const Levels = ({ frame, system }: { frame: Frame; system: System }) => (
  <g>
    {frame.levels.map((z) => (
      <g key={z}>
        <path d={`M${frame.ground.left} ${frame.y(z)}H${frame.moment.right}`} className="l0" />
        <text x={frame.ground.left - 6} y={frame.y(z) + 4} textAnchor="end" className="s">
          {figure(z, "length", system, 0)}
        </text>
      </g>
    ))}
  </g>
);

const swayWords = (sway: number, factor: number, system: System): string => {
  const size = system === "us" ? `${(sway / 0.0254).toFixed(1)} in` : `${Math.round(sway * 1000)} mm`;
  return factor > 1 ? `bends ${size}, drawn × ${factor}` : `bends ${size}, drawn to scale`;
};

const spoken = (scene: Scene, system: System): string => {
  const { design, verdict } = scene;
  const guys = design.guys
    ? `guys at ${design.guys.levels.map((level) => figure(level.height, "length", system)).join(", ")} to anchors ${said(design.guys.radius, "length", system)} out`
    : "free-standing";
  const judged = verdict.passes ? "" : "Not safe, crossed out. ";
  return `${judged}Elevation of the mast to scale: ${said(design.height, "length", system)}, ${guys}; moment diagram beside it.`;
};
