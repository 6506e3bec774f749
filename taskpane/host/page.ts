/** Whether the page is to be seen. */

/** True where there is no page, and for one that is in front and has a size: a pane that is closed has none. */
function isShown(): boolean {
  if (typeof document === "undefined") return true;
  return document.visibilityState !== "hidden" && window.innerWidth > 0 && window.innerHeight > 0;
}

/** Calls back at once and when the page comes to be seen or goes out of sight; the answer stops it. */
export function onPageShown(listener: (shown: boolean) => void): () => void {
  let told: boolean | undefined;
  const tell = () => {
    const now = isShown();
    if (now === told) return;
    told = now;
    listener(now);
  };
  tell();
  if (typeof document === "undefined") return () => undefined;
  document.addEventListener("visibilitychange", tell);
  window.addEventListener("resize", tell);
  return () => {
    document.removeEventListener("visibilitychange", tell);
    window.removeEventListener("resize", tell);
  };
}
