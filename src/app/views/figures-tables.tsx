import { designKey } from "../../model/design-key.ts";
import type { CostMap, FrontPoint } from "../../search/types.ts";
import { Opened } from "../parts/opened.tsx";
import { cellAt } from "../plots/map-axes.ts";
import { marginOf } from "../plots/stairs.ts";
import { figure, grouped, money, type System, unitOf } from "../wording/figures.ts";

const MOST_ROWS = 400;

/** Every plot as a table, for who reads figures better than lines, and for the keyboard. */
export const FrontFigures = ({ points, system, currency, take }: FrontProps) => (
  <Opened words="as figures">
    {() => <FrontRows points={points} system={system} currency={currency} take={take} />}
  </Opened>
);

const FrontRows = ({ points, system, currency, take }: FrontProps) => (
  <>
    <div className="scroll">
      <table aria-label="Designs on the front">
        <thead>
          <tr>
            <th className="num">Cost, {currency}</th>
            <th className="num">Concrete, {unitOf("volume", system)}</th>
            <th className="num">Margin, %</th>
            <th>
              <span className="vh">See</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {points.slice(0, MOST_ROWS).map((point) => (
            <tr key={`${point.cost}/${point.concrete}/${point.margin}`} data-design={designKey(point.design)}>
              <td className="num">{grouped(point.cost, 0, system)}</td>
              <td className="num">{figure(point.concrete, "volume", system)}</td>
              <td className="num">{marginOf(point)}</td>
              <td className="num">
                <button type="button" className="link" onClick={() => take(point)}>
                  see
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
    {points.length > MOST_ROWS && (
      <p className="quiet">
        Showing {MOST_ROWS} of {points.length}.
      </p>
    )}
  </>
);
interface FrontProps {
  readonly points: readonly FrontPoint[];
  readonly system: System;
  readonly currency: string;
  readonly take: (point: FrontPoint) => void;
}

interface MapProps {
  readonly map: CostMap;
  readonly system: System;
  readonly currency: string;
}
export const MapFigures = (props: MapProps) => (
  <Opened words="as figures">{() => <MapRows {...props} />}</Opened>
);

const MapRows = ({ map, system, currency }: MapProps) => {
  const at = cellAt(map);
  const words = (i: number, j: number) => {
    const cell = at(i, j);
    if (!cell) return "";
    return cell.cost === null ? `✕ ${cell.stoppedBy ?? "not safe"}` : money(cell.cost, currency, system);
  };
  return (
    <div className="scroll">
      <table aria-label="Cheapest safe cost over height and antenna area">
        <thead>
          <tr>
            <th>
              up, {unitOf("length", system)} \ area, {unitOf("area", system)}
            </th>
            {map.areas.map((area) => (
              <th key={area} className="num">
                {figure(area, "area", system)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {[...map.heights.keys()].reverse().map((j) => (
            <tr key={map.heights[j]}>
              <th>{figure(map.heights[j], "length", system)}</th>
              {map.areas.map((area, i) => (
                <td key={area} className="num" title={words(i, j)}>
                  {at(i, j)?.cost === null ? "✕" : words(i, j)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
};
