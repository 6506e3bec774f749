/** Copies text. Panes inside other programs often may not use the clipboard directly; then a selection is copied. */
export async function copyText(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    const area = document.createElement("textarea");
    area.value = text;
    area.setAttribute("aria-hidden", "true");
    area.className = "off-screen";
    const before = document.activeElement as HTMLElement | null;
    document.body.append(area);
    area.select();
    let done = false;
    try {
      done = document.execCommand("copy");
    } catch {
      done = false;
    }
    area.remove();
    before?.focus();
    return done;
  }
}
