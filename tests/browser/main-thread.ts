import type { Page } from "playwright-core";

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Microseconds of wall time, and of the thread's own. */
  readonly dur?: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/**
 * Milliseconds that each task kept the page's main thread at work while `act` ran. Thread time, not wall time: on a
 * machine whose every core is searching, wall time would measure the machine.
 */
export const mainThreadTasks = async (page: Page, act: () => Promise<void>): Promise<number[]> => {
  const session = await page.context().newCDPSession(page);
  const events: TraceEvent[] = [];
  session.on("Tracing.dataCollected", ({ value }) => events.push(...(value as unknown as TraceEvent[])));
  const complete = new Promise((resolve) => session.once("Tracing.tracingComplete", resolve));
  await session.send("Tracing.start", {
    traceConfig: { includedCategories: ["toplevel", "disabled-by-default-devtools.timeline", "__metadata"] },
    transferMode: "ReportEvents",
  });
  await act();
  await session.send("Tracing.end");
  await complete;
  const threads = new Set(
    events
      .filter((event) => event.name === "thread_name" && event.args?.name === "CrRendererMain")
      .map((event) => `${event.pid}/${event.tid}`),
  );
  return events
    .filter(
      (event) =>
        /RunTask$/.test(event.name) && event.tdur !== undefined && threads.has(`${event.pid}/${event.tid}`),
    )
    .map((event) => event.tdur! / 1000);
};
