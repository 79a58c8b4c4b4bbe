import { useRef, useState } from "react";
import { startingStudies } from "../../model/starting-studies.ts";
import type { StudyFile } from "../../model/study.ts";
import { book, openStudy, useBook } from "../state/book.ts";
import { downloadText, fileName } from "../state/saving.ts";

const time = (at: number) => new Date(at).toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" });

/** The study on the desk, the ones to start from, and files. */
export const StudyMenu = () => {
  const name = useBook((state) => state.history.present.study.name);
  const savedAt = useBook((state) => state.savedAt);
  const [fault, setFault] = useState<string | null>(null);
  const menu = useRef<HTMLDetailsElement>(null);
  const put = () => menu.current?.removeAttribute("open");
  const open = (file: StudyFile) => {
    const faults = openStudy(file);
    if (faults.length === 0) {
      setFault(null);
      put();
    } else setFault(faults.map(({ path, message }) => `${path} ${message}`).join("; "));
  };
  return (
    <div className="study">
      <details className="menu" ref={menu}>
        <summary>
          <span className="study-name">{name}</span>
        </summary>
        <div>
          <h2>Start from</h2>
          <ul>
            {startingStudies.map(({ id, file }) => (
              <li key={id}>
                <button type="button" className="link" onClick={() => open(file)}>
                  {file.name}
                </button>
              </li>
            ))}
          </ul>
          <p>
            <label className="link">
              Open a file
              <input
                type="file"
                accept=".json,application/json"
                className="vh"
                onChange={(event) => readFile(event.target.files?.[0], open, setFault)}
              />
            </label>
            {" · "}
            <button type="button" className="link" onClick={saveFile}>
              Save to a file
            </button>
          </p>
          {fault && (
            <p role="alert">
              <b>✕ Not opened.</b> {fault} The study on the desk is untouched.
            </p>
          )}
        </div>
      </details>
      <span className="quiet"> · {savedAt ? `saved ${time(savedAt)}` : "as it came"}</span>
    </div>
  );
};

const readFile = async (
  file: File | undefined,
  open: (study: StudyFile) => void,
  refuse: (why: string) => void,
) => {
  if (!file) return;
  if (file.size > 5e6) return refuse(`${file.name} is larger than 5 MB, which no study is.`);
  try {
    open(JSON.parse(await file.text()) as StudyFile);
  } catch (error) {
    refuse(`${file.name} isn’t JSON: ${(error as Error).message}.`);
  }
};

const saveFile = () => {
  const { study } = book.get().history.present;
  downloadText(fileName(study.name, "json"), `${JSON.stringify(study, null, 2)}\n`, "application/json");
};
