// node check.mjs CHROMIUM FOLDER: each page of the folder: no message of the console, no request but its own, no sideways
// overflow at three widths, nothing that axe finds (light and dark), headings in order, and what it prints.
// LOOK=1 leaves a picture of each page at each width beside it.
import {createRequire} from "node:module";
import {execFileSync} from "node:child_process";
import {readdirSync, readFileSync} from "node:fs";
import {join} from "node:path";
import {chromium} from "playwright-core";

const [browserPath, folder] = process.argv.slice(2);
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const WIDTHS = [360, 768, 1280];
const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "best-practice"];
const MOST_PAGES = 60; // of a demo project; a page that prints blank or without end is a fault
let passed = 0;
const faults = [];
const holds = (what, good, said) => (good ? passed++ : faults.push(`${what}: ${said}`));

// Wider than the window as a whole, or an element outside that no region of its own scrolls.
const overflow = () => {
    const wide = document.documentElement.scrollWidth - document.documentElement.clientWidth;
    const out = [];
    for (const e of document.querySelectorAll("main *, header, footer, nav *")) {
        if (e.closest("svg, math, .skip") || e.closest(".wide, .paper, .eq")?.contains(e)) continue;
        const box = e.getBoundingClientRect();
        if (box.right > innerWidth + 1) out.push(`${e.tagName} ${e.textContent.slice(0, 40)}`);
    }
    return wide > 0 || out.length ? `${wide} px; ${out.slice(0, 3).join(" | ")}` : "";
};
// One h1, no level skipped, a landmark of each kind, heads of tables and alternatives of pictures.
const structure = () => {
    const out = [];
    const levels = [...document.querySelectorAll("h1,h2,h3,h4")].map((h) => Number(h.tagName[1]));
    if (levels.filter((n) => n === 1).length !== 1 || levels[0] !== 1) out.push("not one h1, first");
    levels.forEach((n, i) => i && n > levels[i - 1] + 1 && out.push(`h${levels[i - 1]} is followed by h${n}`));
    for (const name of ["main", "footer"]) if (document.querySelectorAll(name).length !== 1) out.push(`no one ${name}`);
    if (document.documentElement.lang !== "en") out.push("no language");
    if (document.querySelector("script, link, iframe, object, embed, img")) out.push("an element that the page does not need");
    if (!/result [0-9a-f]{8}/.test(document.querySelector("footer").textContent)) out.push("no result in the foot");
    for (const t of document.querySelectorAll("table")) {
        if (t.querySelector("thead th:not([scope=col])")) out.push("a head without scope");
        if ([...t.querySelectorAll("tbody th")].some((h) => h.scope !== "row")) out.push("a row's name without scope");
    }
    for (const s of document.querySelectorAll("figure svg[role=img]"))
        if (!s.querySelector("title")?.textContent || !(s.querySelector("desc")?.textContent.length > 40))
            out.push("a picture without words");
    for (const f of document.querySelectorAll("figure .paper"))
        if (getComputedStyle(f).backgroundColor !== "rgb(255, 255, 255)") out.push("a drawing not on white paper");
    return out.join("; ");
};

// Each table says what it is; a table of up to seven columns is cards on a phone; a wider one moves in a region that the
// keyboard reaches and that has a name. Every link of the page leads somewhere. Parts in their order.
const tables = () => {
    const out = [];
    for (const t of document.querySelectorAll("table")) {
        const caption = t.querySelector("caption")?.textContent || "", region = t.closest("[role=region]");
        if (!/\d rows?\./.test(caption)) out.push(`a caption without a count: ${caption.slice(0, 60)}`);
        if (!region || region.tabIndex !== 0 || !region.getAttribute("aria-label")) out.push("a table in no named region");
        if (t.querySelectorAll("thead th").length > 7) continue;
        if (region.scrollWidth > region.clientWidth + 1) out.push(`a card wider than a phone: ${caption.slice(0, 60)}`);
        for (const c of t.querySelectorAll("tbody td:not(:empty)")) {
            if (getComputedStyle(c).display === "table-cell") out.push(`no card: ${caption.slice(0, 60)}`);
            if (!c.dataset.of && c.previousElementSibling) out.push(`a figure without its name: ${c.textContent}`);
        }
    }
    for (const a of document.querySelectorAll("a[href^='#']"))
        if (!document.getElementById(a.hash.slice(1))) out.push(`a link to nothing: ${a.hash}`);
    const part = (h) => /^(Why|What is missing|What fails|What is not shown, and whom to ask)$/.test(h) ? 0
        : /^D\d+ /.test(h) ? 3 : /^(Warnings|Assumptions)$/.test(h) ? 4 : h === "Sources" ? 5
        : h === "Not checked here" ? 6 : /^(Caution|Made by)$/.test(h) ? 7 : 2;
    const parts = [...document.querySelectorAll("h2")].map((h) => part(h.textContent));
    if (parts.some((p, i) => i && p < parts[i - 1])) out.push(`parts out of order: ${parts}`);
    for (const p of [4, 5, 6, 7]) if (!parts.includes(p)) out.push(`no part ${p}`);
    return [...new Set(out)].slice(0, 5).join("; ");
};

async function visit(browser, name, scheme) {
    const context = await browser.newContext({colorScheme: scheme});
    const page = await context.newPage();
    const told = [];
    page.on("console", (message) => told.push(message.text()));
    page.on("pageerror", (error) => told.push(String(error)));
    page.on("request", (request) => request.url().startsWith("file:") || told.push(`asks for ${request.url()}`));
    await page.setViewportSize({width: WIDTHS[0], height: 800});
    await page.goto(`file://${join(folder, name)}`);
    const shown = await page.evaluate(tables);
    holds(`${name} ${scheme}, tables and links`, !shown, shown);
    for (const width of WIDTHS) {
        await page.setViewportSize({width, height: 900});
        const said = await page.evaluate(overflow);
        holds(`${name} ${scheme} at ${width}`, !said, `wider than the window: ${said}`);
        if (process.env.LOOK) await page.screenshot({path: join(folder, `${name}-${scheme}-${width}.png`), fullPage: true});
    }
    const shape = await page.evaluate(structure);
    holds(`${name} ${scheme}`, !shape, shape);
    holds(`${name} ${scheme}`, !told.length, `the console: ${told.join("; ")}`);
    await page.evaluate(axe);
    for (const width of scheme === "light" ? [WIDTHS[0], WIDTHS[2]] : [WIDTHS[0]]) {
        await page.setViewportSize({width, height: 900});
        const found = await page.evaluate((values) => window.axe.run(document, {runOnly: {type: "tag", values}}), TAGS);
        const words = found.violations.map((v) => `${v.id} (${v.nodes.length}): ${v.nodes[0].html.slice(0, 160)} ` +
            `${(v.nodes[0].failureSummary || "").replace(/\s+/g, " ").slice(0, 200)}`);
        holds(`${name} ${scheme} at ${width}, axe`, found.passes.length > 10, "few rules applied");
        holds(`${name} ${scheme} at ${width}, axe`, !words.length, words.join("\n    "));
    }
    if (scheme === "light") await print(page, name);
    await context.close();
}

async function print(page, name) {
    for (const format of ["Letter", "A4"]) {
        const path = join(folder, `${name}-${format}.pdf`);
        await page.pdf({path, format, preferCSSPageSize: false});
        const pages = Number(/Pages: +(\d+)/.exec(execFileSync("pdfinfo", [path], {encoding: "utf8"}))[1]);
        const words = execFileSync("pdftotext", [path, "-"], {encoding: "utf8"}).trim().split("\f");
        holds(`${name} on ${format}`, pages >= 1 && pages <= MOST_PAGES, `${pages} pages`);
        holds(`${name} on ${format}`, words.every((w) => w.trim()), "a blank page");
    }
}

const browser = await chromium.launch({executablePath: browserPath, args: ["--no-sandbox", "--disable-gpu"]});
const names = readdirSync(folder).filter((n) => n.endsWith(".html")).sort();
for (const name of names) for (const scheme of ["light", "dark"]) await visit(browser, name, scheme);
await browser.close();
for (const fault of faults) console.log(`browser: ${fault}`);
console.log(`browser: ${names.length} pages, ${passed} passed, ${faults.length} failed`);
process.exit(faults.length || !names.length ? 1 : 0);
