import "../../css/every.css";
import { BarredThings } from "./barred.tsx";
import { GuyChoices, MastChoices, Sold } from "./choices.tsx";
import { FurtherWind } from "./further-wind.tsx";
import { Layers } from "./layers.tsx";
import { FurtherSite, FurtherSoil } from "./site.tsx";
import { Varies } from "./varies.tsx";
import { Antennas, FurtherWishes, NextAim } from "./wishes.tsx";

/** What is rarely asked, by topic. */
const EveryGiven = () => (
  <div className="topics">
    <section aria-label="Wind and air">
      <h3>Wind and air</h3>
      <FurtherWind />
      <FurtherSite />
    </section>
    <section aria-label="Ground and water">
      <h3>Ground and water</h3>
      <Layers />
      <FurtherSoil />
      <h3>Mast</h3>
      <MastChoices />
      <h3>Paid as it is sold</h3>
      <Sold />
      <BarredThings />
    </section>
    <section aria-label="Guys and anchors">
      <h3>Guys and anchors</h3>
      <GuyChoices />
    </section>
    <section aria-label="Antennas">
      <h3>Antennas</h3>
      <Antennas />
    </section>
    <section aria-label="Further wishes">
      <h3>Further wishes</h3>
      <FurtherWishes />
      <NextAim />
      <Varies />
    </section>
  </div>
);
export default EveryGiven;
