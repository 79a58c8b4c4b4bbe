/** Patterns used by every drawing and chart; a hatch is a material or a prohibition, nothing else. */
export const Hatches = () => (
  <svg width="0" height="0" style={{ position: "absolute" }} aria-hidden="true">
    <defs>
      <Lines id="clay" step={9} turn={-45} className="lq" width={0.55} />
      <Lines id="clay-soft" step={14} turn={-45} className="lq" width={0.5} />
      <Lines id="cut" step={5} turn={-45} className="l1" width={0.8} />
      <pattern id="loam" width="14" height="8" patternUnits="userSpaceOnUse">
        <path d="M1 2h4M8 6h4" className="lq" style={{ strokeWidth: 0.6 }} />
      </pattern>
      <pattern id="rock" width="16" height="16" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
        <path d="M0 4H16M0 7.5H16" className="lq" style={{ strokeWidth: 0.55 }} />
      </pattern>
      <pattern id="sand" width="9" height="9" patternUnits="userSpaceOnUse">
        <circle cx="2" cy="2" r=".7" className="k" />
        <circle cx="6.5" cy="6.5" r=".7" className="k" />
      </pattern>
      <pattern id="conc" width="26" height="22" patternUnits="userSpaceOnUse">
        <g className="k" style={{ opacity: 0.85 }}>
          {concreteDots.map(([x, y, r]) => (
            <circle key={`${x},${y}`} cx={x} cy={y} r={r} />
          ))}
        </g>
        <path d="M15 3l3.4 1.2-2.8 2.4zM4 10l3.2.6-2 2.6zM17 12l3 1.6-3.2 1.6z" className="l1 n" />
      </pattern>
      <pattern id="unsafe" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path d="M0 4H8M4 0V8" className="lq" style={{ strokeWidth: 0.5 }} />
      </pattern>
      <pattern id="dots" width="6" height="6" patternUnits="userSpaceOnUse">
        <circle cx="1.5" cy="1.5" r=".7" className="k" />
        <circle cx="4.5" cy="4.5" r=".7" className="k" />
      </pattern>
      <pattern id="hor" width="6" height="4" patternUnits="userSpaceOnUse">
        <path d="M0 2H6" className="l1" />
      </pattern>
      <pattern id="ver" width="4" height="6" patternUnits="userSpaceOnUse">
        <path d="M2 0V6" className="l1" />
      </pattern>
      <Arrow id="ar" width={9} height={7} />
      <Arrow id="arb" width={13} height={10} />
      <marker
        id="tick"
        viewBox="0 0 8 8"
        refX="4"
        refY="4"
        markerWidth="8"
        markerHeight="8"
        orient="auto"
        markerUnits="userSpaceOnUse"
      >
        <path d="M1.5 6.5L6.5 1.5" className="l2" />
      </marker>
    </defs>
  </svg>
);

const concreteDots = [
  [3, 4, 0.8],
  [12, 9, 0.7],
  [21, 3, 0.8],
  [7, 17, 0.8],
  [23, 15, 0.7],
  [16, 20, 0.7],
] as const;

const Lines = (props: { id: string; step: number; turn: number; className: string; width: number }) => (
  <pattern
    id={props.id}
    width={props.step}
    height={props.step}
    patternUnits="userSpaceOnUse"
    patternTransform={`rotate(${props.turn})`}
  >
    <path
      d={`M0 ${props.step / 2}H${props.step}`}
      className={props.className}
      style={{ strokeWidth: props.width }}
    />
  </pattern>
);

const Arrow = ({ id, width, height }: { id: string; width: number; height: number }) => (
  <marker
    id={id}
    viewBox="0 0 10 8"
    refX="9.5"
    refY="4"
    markerWidth={width}
    markerHeight={height}
    orient="auto-start-reverse"
    markerUnits="userSpaceOnUse"
  >
    <path d="M0 .8L10 4 0 7.2z" className="k" />
  </marker>
);

/** Hatch of undisturbed ground by how it digs: stiff, soft, sand or rock. */
export const groundHatch = (digging: "easy" | "firm" | "hard" | "rock" | undefined): string => {
  if (digging === "rock") return "url(#rock)";
  if (digging === "easy") return "url(#clay-soft)";
  return "url(#clay)";
};
