import type { ReactNode } from "react";
import type { SketchKind } from "../wording/formulas.ts";

interface Props {
  readonly kind: SketchKind;
  /** What is drawn, for who can't see it. */
  readonly title: string;
  /** The load, and what meets it ("holds 7,053 lbf"). */
  readonly asks: string;
  readonly holds: string;
  /** Only what governs wears the colour. */
  readonly governs: boolean;
}

/** Where a check happens: not to scale, one sketch for a kind of check, its two figures written where they act. */
export const CheckSketch = ({ kind, title, asks, holds, governs }: Props) => {
  const words: Words = {
    asks,
    holds,
    place: governs ? "lg n" : "l4 n",
    said: governs ? "g halo" : "b halo",
  };
  return (
    <svg
      className="check-sketch"
      viewBox="0 0 340 160"
      role="img"
      aria-label={`${title}, sketch not to scale`}
    >
      {sketches[kind](words)}
    </svg>
  );
};

interface Words {
  readonly asks: string;
  readonly holds: string;
  readonly place: string;
  readonly said: string;
}
interface Label {
  readonly x: number;
  readonly y: number;
  readonly end?: boolean;
}

const Asks = ({ x, y, end, words }: Label & { words: Words }) => (
  <text x={x} y={y} textAnchor={end ? "end" : "start"} className={words.said}>
    {words.asks}
  </text>
);
const Holds = ({ x, y, end, words }: Label & { words: Words }) => (
  <text x={x} y={y} textAnchor={end ? "end" : "start"} className="halo">
    {words.holds}
  </text>
);
const Push = ({ d }: { d: string }) => <path d={d} className="l4 n" markerEnd="url(#ar)" />;
const Ground = ({ y = 70, left = 10, right = 330 }: { y?: number; left?: number; right?: number }) => (
  <>
    <rect x={left} y={y} width={right - left} height={150 - y} fill="url(#clay)" />
    <path d={`M${left} ${y}H${right}`} className="l3" />
  </>
);
const Concrete = ({ x, y, width, height }: { x: number; y: number; width: number; height: number }) => (
  <>
    <rect x={x} y={y} width={width} height={height} className="p" />
    <rect x={x} y={y} width={width} height={height} fill="url(#conc)" className="l3" />
  </>
);
/** A length of lattice, upright, from one height down to another. */
const Lattice = ({ x, top, foot, width = 36 }: { x: number; top: number; foot: number; width?: number }) => {
  const panels = Math.max(1, Math.round((foot - top) / width));
  const step = (foot - top) / panels;
  const zig = Array.from(
    { length: panels + 1 },
    (_, i) => `${i === 0 ? "M" : "L"}${i % 2 === 0 ? x : x + width} ${top + i * step}`,
  );
  return (
    <>
      <path d={`M${x} ${top}V${foot}M${x + width} ${top}V${foot}`} className="l3" />
      <path d={zig.join("")} className="l1 n" />
    </>
  );
};

const mastOn = (words: Words, place: string, arrow: string, at: Label): ReactNode => (
  <>
    <Lattice x={150} top={6} foot={154} />
    <path d={place} className={words.place} />
    <Push d={arrow} />
    <Asks {...at} words={words} />
    <Holds x={200} y={at.y + 22} words={words} />
  </>
);
const inGround = (words: Words, thing: ReactNode, pull: string, at: Label, holdsAt: Label): ReactNode => (
  <>
    <Ground />
    {thing}
    <Push d={pull} />
    <Asks {...at} words={words} />
    <Holds {...holdsAt} words={words} />
  </>
);
const onBlock = (words: Words, more: ReactNode, at: Label, holdsAt: Label): ReactNode => (
  <>
    <Ground y={58} />
    <Lattice x={152} top={4} foot={48} width={24} />
    <Concrete x={120} y={48} width={88} height={76} />
    {more}
    <Asks {...at} words={words} />
    <Holds {...holdsAt} words={words} />
  </>
);
const buried = <Concrete x={200} y={100} width={44} height={24} />;

const sketches: Readonly<Record<SketchKind, (words: Words) => ReactNode>> = {
  leg: (words) => mastOn(words, "M186 62V100", "M186 18V56", { x: 200, y: 70 }),
  bracing: (words) => mastOn(words, "M150 80L186 117", "M96 80H146", { x: 200, y: 70 }),
  buckling: (words) => (
    <>
      <path d="M150 8V152" className="l1 d" />
      <path d="M150 8C186 60 186 100 150 152" className={words.place} />
      <Push d="M150 -4V8" />
      <path d="M60 152L150 40L240 152" className="l2 n" />
      <Asks x={190} y={74} words={words} />
      <Holds x={190} y={96} words={words} />
    </>
  ),
  guy: (words) => (
    <>
      <Ground y={140} />
      <path d="M250 6V140" className="l4" />
      <path d="M250 24Q150 92 60 140" className={words.place} />
      <Push d="M160 80L112 106" />
      <Asks x={150} y={58} end words={words} />
      <Holds x={146} y={78} end words={words} />
    </>
  ),
  lean: (words) => (
    <>
      <Ground y={146} />
      <path d="M140 146V8" className="l1 d" />
      <path d="M140 146Q146 70 184 10" className={words.place} />
      <path d="M140 20A126 126 0 0 1 176 24" className="l2 n" />
      <Asks x={200} y={54} words={words} />
      <Holds x={200} y={76} words={words} />
    </>
  ),
  turn: (words) => (
    <>
      <path d="M120 118L196 118L158 52Z" className="l1 n d" />
      <path d="M131 129L201 98L139 59Z" className={words.place} />
      <path d="M206 120A50 50 0 0 0 212 92" className="l2 n" markerEnd="url(#ar)" />
      <Asks x={226} y={84} words={words} />
      <Holds x={226} y={106} words={words} />
    </>
  ),
  pipe: (words) => (
    <>
      <Lattice x={140} top={94} foot={154} />
      <path d="M158 94V10" className={words.place} />
      <path d="M110 24H206M122 54H194" className="l3" />
      <Push d="M60 24H102" />
      <Push d="M76 54H114" />
      <circle cx="158" cy="94" r="6" className={words.place} />
      <Asks x={196} y={92} words={words} />
      <Holds x={196} y={114} words={words} />
    </>
  ),
  deadman: (words) =>
    inGround(
      words,
      <>
        <path d="M200 100L168 70H276L244 100" className="l2 n d" />
        {buried}
        <path d="M222 100L150 20" className={words.place} />
      </>,
      "M150 20L122 -6",
      { x: 160, y: 22 },
      { x: 192, y: 116, end: true },
    ),
  post: (words) =>
    inGround(
      words,
      <>
        <Concrete x={196} y={70} width={48} height={70} />
        <path d="M220 128V34" className={words.place} />
      </>,
      "M220 36L164 12",
      { x: 232, y: 30 },
      { x: 188, y: 110, end: true },
    ),
  screw: (words) =>
    inGround(
      words,
      <>
        <path d="M258 138L174 40" className={words.place} />
        <path d="M242 132Q258 118 264 112M232 120Q248 106 254 100" className="l3 n" />
      </>,
      "M174 40L142 4",
      { x: 186, y: 34 },
      { x: 214, y: 116, end: true },
    ),
  rod: (words) => (
    <>
      <rect x="10" y="70" width="320" height="80" fill="url(#rock)" />
      <path d="M10 70H330" className="l3" />
      <path d="M232 138L176 70H284Z" className="l2 n d" />
      <path d="M232 138L176 38" className={words.place} />
      <Push d="M176 38L156 4" />
      <Asks x={188} y={34} words={words} />
      <Holds x={180} y={120} end words={words} />
    </>
  ),
  bearing: (words) =>
    onBlock(
      words,
      <>
        <Push d="M164 8V44" />
        <path d="M120 124H208L208 148L120 134Z" fill="url(#hor)" className="l3" />
        <path d="M208 124V148" className={words.place} />
      </>,
      { x: 216, y: 144 },
      { x: 216, y: 112 },
    ),
  overturning: (words) =>
    onBlock(
      words,
      <>
        <Push d="M84 24H148" />
        <Push d="M164 66V112" />
        <path d="M208 58L262 124H208" fill="url(#hor)" className="l2" />
        <circle cx="208" cy="124" r="6" className={words.place} />
      </>,
      { x: 78, y: 28, end: true },
      { x: 216, y: 146 },
    ),
  sliding: (words) =>
    onBlock(
      words,
      <>
        <Push d="M84 40H148" />
        <path d="M118 124H210" className={words.place} />
        <path d="M200 134H130" className="l3" markerEnd="url(#ar)" />
      </>,
      { x: 78, y: 44, end: true },
      { x: 216, y: 138 },
    ),
  slab: (words) => (
    <>
      <Ground y={44} />
      <Lattice x={158} top={4} foot={36} width={24} />
      <Concrete x={150} y={36} width={40} height={64} />
      <Concrete x={90} y={96} width={160} height={28} />
      <path d="M100 118H240" className="l3" />
      <path d="M190 94V126" className={words.place} />
      {[90, 130, 170, 210, 248].map((x) => (
        <path key={x} d={`M${x} 150V128`} className="l2" markerEnd="url(#ar)" />
      ))}
      <Asks x={200} y={62} words={words} />
      <Holds x={200} y={84} words={words} />
    </>
  ),
  pier: (words) => (
    <>
      <Ground y={50} />
      <Lattice x={154} top={4} foot={40} width={24} />
      <Concrete x={146} y={40} width={40} height={104} />
      <Push d="M92 28H150" />
      <path d="M186 50L216 100H186M146 144V116L112 144Z" fill="url(#hor)" className="l2" />
      <path d="M186 50V144" className={words.place} />
      <Asks x={86} y={32} end words={words} />
      <Holds x={224} y={104} words={words} />
    </>
  ),
  plate: (words) => (
    <g transform="translate(-64 0)">
      <Lattice x={152} top={4} foot={66} />
      <Push d="M170 16V60" />
      <path d="M132 70H208" className={words.place} />
      <Concrete x={100} y={74} width={140} height={76} />
      <path d="M132 74L112 110M208 74L228 110" className="l1 d" />
      <Asks x={200} y={44} words={words} />
      <Holds x={248} y={112} words={words} />
    </g>
  ),
  depth: (words) => (
    <>
      <Ground y={30} />
      <path d="M10 92H330" className="l2 dd" />
      <Concrete x={130} y={22} width={60} height={94} />
      <path d="M112 30V116" className={words.place} />
      <Asks x={104} y={66} end words={words} />
      <Holds x={200} y={86} words={words} />
    </>
  ),
  lot: (words) => (
    <g transform="translate(-54 0)">
      <path d="M60 14H280V146H60Z" className="l4 n" />
      <path d="M82 34H258V126H82Z" className="l2 n d" />
      <path d="M170 80V50M170 80L130 104M170 80L212 104" className="l2" />
      <path d="M212 104H280" className={words.place} />
      <Asks x={290} y={96} words={words} />
      <Holds x={290} y={118} words={words} />
    </g>
  ),
  fall: (words) => (
    <>
      <Ground y={140} />
      <path d="M80 140V20" className="l4" />
      <path d="M80 20A120 120 0 0 1 200 140" className="l2 n df" />
      <path d="M270 140V40M254 50H286" className="l3" />
      <path d="M80 132H266" className={words.place} markerEnd="url(#ar)" />
      <Asks x={150} y={48} words={words} />
      <Holds x={150} y={68} words={words} />
    </>
  ),
};
