export const when = (at: number) =>
  new Date(at).toLocaleString("en-GB", {
    day: "numeric",
    month: "short",
    hour: "2-digit",
    minute: "2-digit",
  });

export const Does = ({ act, label, children }: { act: () => unknown; label?: string; children: string }) => (
  <button type="button" className="link" aria-label={label} onClick={() => void act()}>
    {children}
  </button>
);
