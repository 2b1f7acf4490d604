// Checks HTML reports: node browser.mjs CHROMIUM PAGE...
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { basename } from "node:path";
import { pathToFileURL } from "node:url";
import { chromium } from "playwright-core";

const require = createRequire(import.meta.url);
const axe = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");
const widths = [360, 1280];
// what is left of a sheet of A4 and of Letter between its margins of 15 and 16 mm,
// in pixels of CSS
const papers = { A4: [680, 1001], Letter: [702, 934] };

const [executablePath, ...pages] = process.argv.slice(2);
const wrong = [];
const browser = await chromium.launch({ executablePath, args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--disable-background-networking", "--disable-component-update", "--disable-sync"] });
for (const path of pages) {
  await check(basename(path), pathToFileURL(path).href);
}
await browser.close();
for (const line of wrong) console.error(line);
console.log(`${pages.length} pages, ${wrong.length} complaints`);
process.exitCode = wrong.length > 0 ? 1 : 0;

async function check(name, address) {
  const page = await browser.newPage();
  const tell = (text) => wrong.push(`${name}: ${text}`);
  page.on("console", (m) => tell(`console: ${m.text()}`));
  page.on("pageerror", (e) => tell(`error: ${e.message}`));
  page.on("request", (r) => r.url() === address || tell(`request of ${r.url()}`));
  await page.goto(address);
  for (const width of widths) await sideways(page, width, tell);
  await readable(page, tell);
  await links(page, tell);
  for (const paper of Object.keys(papers)) await printed(page, paper, tell);
  await barriers(page, tell);
  await page.close();
}

async function sideways(page, width, tell) {
  await page.setViewportSize({ width, height: 900 });
  const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  if (over > 0) tell(`scrolls sideways by ${over} px at ${width} px`);
}

// The letters of drawings are not made too small to read on a phone, and the heading
// of a column, which does not break within words, fits it.
async function readable(page, tell) {
  await page.setViewportSize({ width: widths[0], height: 900 });
  const found = await page.evaluate(() => {
    const small = [...document.querySelectorAll("svg")].map((s) => s.getBoundingClientRect().width / s.viewBox.baseVal.width).filter((scale) => scale < 0.85);
    const seen = [...document.querySelectorAll("th")].filter((th) => th.getBoundingClientRect().right > 0);
    const broken = seen.filter((th) => getComputedStyle(th).overflowWrap === "normal" && th.scrollWidth > th.clientWidth);
    return { small: small.length, broken: broken.map((th) => th.textContent) };
  });
  if (found.small > 0) tell(`${found.small} drawings are too small to read at ${widths[0]} px`);
  for (const text of found.broken) tell(`the heading "${text}" is wider than its column at ${widths[0]} px`);
}

// Each link within the page leads somewhere, and each finding that a drawing shows has
// a link to it.
async function links(page, tell) {
  const found = await page.evaluate(() => {
    const target = (a) => document.getElementById(decodeURIComponent(a.hash.slice(1)));
    const within = [...document.querySelectorAll("a[href^='#']")];
    const back = [...document.querySelectorAll("figcaption a")].filter((a) => {
      const figure = a.closest("figure").id;
      return ![...(target(a)?.querySelectorAll(".shown a") ?? [])].some((link) => target(link)?.id === figure);
    });
    return { lost: within.filter((a) => !target(a)).map((a) => a.hash), back: back.map((a) => a.hash) };
  });
  for (const hash of found.lost) tell(`the link to ${hash} leads nowhere`);
  for (const hash of found.back) tell(`the finding ${hash} does not lead to the drawing that shows it`);
}

// A drawing is kept in one piece where it may not be broken and fits on a sheet.
async function printed(page, paper, tell) {
  const [width, height] = papers[paper];
  await page.emulateMedia({ media: "print" });
  await page.setViewportSize({ width, height });
  const drawings = await page.evaluate(() => [...document.querySelectorAll(".sheet")].map((s) => {
    const box = s.getBoundingClientRect();
    return { id: s.parentElement.id, width: box.width, height: box.height, kept: getComputedStyle(s).breakInside === "avoid" };
  }));
  for (const d of drawings) {
    if (!d.kept) tell(`${d.id} may be cut at the end of a page`);
    if (d.height > height || d.width > width) tell(`${d.id} of ${d.width} x ${d.height} px is larger than ${paper}`);
  }
  await page.emulateMedia({ media: "screen" });
}

async function barriers(page, tell) {
  await page.evaluate(axe);
  const found = await page.evaluate(() => globalThis.axe.run(document, { resultTypes: ["violations"] }));
  for (const v of found.violations) {
    tell(`${v.id}: ${v.help}: ${v.nodes.slice(0, 3).map((n) => n.target.join(" ")).join(", ")}`);
  }
}
