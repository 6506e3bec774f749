// Takes the README's picture of the desk from the built pages: npm run build && node tests/browser/picture.mjs
import { spawn } from "node:child_process";
import path from "node:path";
import { chromium } from "playwright-core";

const root = path.resolve(import.meta.dirname, "../..");
const port = 3187;
const server = spawn("node", ["build.mjs", "start", "--port", String(port)], {
  cwd: root,
  stdio: ["ignore", "pipe", "inherit"],
});
await new Promise((ready) => {
  server.stdout.on("data", (text) => String(text).includes("Tablefeed desk") && ready());
});
const browser = await chromium.launch({
  executablePath: "/usr/bin/chromium",
  args: "--no-sandbox --headless --disable-gpu --disable-quic --disable-background-networking --disable-component-update --disable-sync --no-first-run".split(
    " ",
  ),
});
try {
  const page = await browser.newPage({ viewport: { width: 1440, height: 860 } });
  await page.goto(`http://localhost:${port}/`);
  // It opens on a row of the demo job that stops: the long neck.
  await page.waitForFunction(() => document.documentElement.dataset.ready === "yes");
  await page.waitForSelector("#pane .verdict");
  await page.screenshot({ path: path.join(root, "taskpane/pictures/desk.png") });
} finally {
  await browser.close();
  server.kill();
}
