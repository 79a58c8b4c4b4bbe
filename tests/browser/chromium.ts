import { execFileSync } from "node:child_process";
import { accessSync, constants, existsSync } from "node:fs";
import { delimiter, join } from "node:path";
import { type Browser, chromium } from "playwright-core";

const names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome", "msedge"];
const places = [
  "/usr/bin",
  "/usr/local/bin",
  "/snap/bin",
  "/opt/google/chrome",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
  "C:\\Program Files\\Google\\Chrome\\Application",
  "C:\\Program Files (x86)\\Google\\Chrome\\Application",
  "C:\\Program Files (x86)\\Microsoft\\Edge\\Application",
];

const runnable = (path: string): boolean => {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
};

const installed = (): string | undefined => {
  const folders = [...(process.env.PATH ?? "").split(delimiter), ...places];
  const files = folders.flatMap((folder) =>
    names.flatMap((name) => [join(folder, name), join(folder, `${name}.exe`)]),
  );
  return [...files, ...places.filter((place) => place.startsWith("/Applications"))].find(
    (file) => existsSync(file) && runnable(file),
  );
};

/** A Chromium of the machine; on a bare Debian as root it is installed, anywhere else one is asked for by name. */
export const executable = (): string => {
  const found = installed();
  if (found) return found;
  if (process.getuid?.() === 0 && existsSync("/usr/bin/apt-get")) {
    try {
      // a bare machine has no package lists yet
      execFileSync("apt-get", ["update"], { stdio: "ignore" });
      execFileSync("apt-get", ["install", "-y", "chromium"], { stdio: "ignore" });
    } catch {
      // the words below say what to install by hand
    }
    const fetched = installed();
    if (fetched) return fetched;
  }
  throw new Error(
    "no Chromium found on PATH or in the usual places: install one (Debian and Ubuntu: apt-get install chromium; macOS: brew install --cask chromium; Windows: Microsoft Edge or Google Chrome) and run again",
  );
};

/** Nothing but the page's own requests may leave this browser. */
export const launch = (): Promise<Browser> =>
  chromium.launch({
    executablePath: executable(),
    headless: true,
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });
