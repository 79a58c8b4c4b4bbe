import { Stated } from "../../parts/stated.tsx";
import { changeStudy, useBook } from "../../state/book.ts";
import { type System, said } from "../../wording/figures.ts";
import { typedAir, typedStiffness } from "../../wording/given.ts";
import { airWords } from "../../wording/givens.ts";
import { Plain, Quantity, Tick, useReading } from "./fields.tsx";

const inAir = (celsius: number | undefined, system: System): string =>
  celsius === undefined ? "" : airWords(celsius, system);

/** Air, and what the base turns against. */
export const FurtherSite = () => {
  const { site } = useReading().study;
  const system = useBook((state) => state.system);
  const { temperature, baseStiffness } = site;
  const air = (key: "installed" | "coldest" | "hottest" | "iced", label: string, example: string) => ({
    key,
    label,
    example,
    start: inAir(temperature?.[key] ?? (key === "iced" ? 0 : undefined), system),
    read: (text: string) => typedAir(text, system),
    as: "number" as const,
  });
  return (
    <>
      <Stated
        label="Temperature of the air"
        shown={
          temperature
            ? `rigged at ${inAir(temperature.installed, system)}, air ${inAir(temperature.coldest, system)} to ${inAir(temperature.hottest, system)}`
            : "temperature not counted"
        }
        parts={[
          air("installed", "When the guys are drawn taut", "50 °F"),
          air("coldest", "Coldest in wind", "−10 °F"),
          air("hottest", "Hottest in wind", "100 °F"),
          air("iced", "While ice hangs", "32 °F"),
        ]}
        remove={temperature && "Don’t count temperature"}
        write={(values) =>
          changeStudy(
            ["site", "temperature"],
            values,
            values ? "temperature stated" : "temperature not counted",
          )
        }
      />
      <Plain
        path={["site", "baseStiffness"]}
        label="What the footing of a mast without guys resists turning with"
        shown={
          baseStiffness === undefined
            ? "base of a mast without guys does not turn"
            : `base turns against ${said(baseStiffness, "moment", system)}/rad`
        }
        start={
          baseStiffness === undefined
            ? ""
            : `${said(baseStiffness, "moment", system).replace(/[,\u2009]/g, "")}/rad`
        }
        read={(text) => typedStiffness(text, system)}
        none="base does not turn"
      />
    </>
  );
};

/** Water, and how deep one may dig. */
export const FurtherSoil = () => (
  <>
    <Quantity
      path={["site", "waterTable"]}
      dimension="length"
      label="Water below grade"
      prefix="water "
      suffix=" down"
      none="no water as deep as anything dug"
    />
    <Tick path={["site", "pourBelowWater"]} label="Concrete may be poured below water" />
  </>
);
