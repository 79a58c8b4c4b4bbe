import type { Design } from "../../model/design.ts";
import { footingAcross } from "../../model/footing-size.ts";

/** A mast as a mark, several to one scale: what differs shows before a word is read. */
export const SmallMast = ({ design, scale, height }: { design: Design; scale: number; height: number }) => {
  const width = 152;
  const ground = height - 18;
  const guys = design.guys;
  const reach = guys?.radius ?? 2;
  // Anchor 1 to the left at its whole radius, the others half as far to the right, as the eye sees a star of three.
  const far = guys ? (guys.perLevel === 4 ? reach : reach / 2) : 0;
  const x = Math.min(Math.max(reach * scale + 6, 20), width - far * scale - 6);
  const top = ground - design.height * scale;
  const anchors = guys ? [x - reach * scale, x + far * scale] : [];
  const block = Math.max(footingAcross(design.footing) * scale, 5);
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      <rect x="0" y={ground} width={width} height="13" fill="url(#clay)" />
      <path d={`M0 ${ground}H${width}`} className="l2" />
      {guys?.levels.map((level) => (
        <path
          key={level.height}
          d={anchors.map((ax) => `M${x} ${ground - level.height * scale}L${ax} ${ground}`).join("")}
          className="l1"
        />
      ))}
      <path d={`M${x} ${ground}V${top}`} className="l4" />
      <path
        d={`M${x} ${top}V${top - 12}M${x - 24} ${top - 5}H${x + 24}M${x - 11} ${top - 12}H${x + 11}`}
        className="l2"
      />
      <rect
        x={x - block / 2}
        y={ground}
        width={block}
        height={Math.max(design.footing.depth * scale, 5)}
        className="p l2"
      />
      {anchors.map((ax) =>
        guys?.anchor.kind === "screw" ? (
          <path key={ax} d={`M${ax} ${ground}L${ax + (ax < x ? -5 : 5)} ${ground + 9}`} className="l3" />
        ) : (
          <rect key={ax} x={ax - 2.5} y={ground + 5} width="5" height="5" className="p l2" />
        ),
      )}
    </svg>
  );
};
