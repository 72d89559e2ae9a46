// node sarif.mjs SCHEMA LOG.sarif...: each log against the schema of SARIF 2.1.0, formats of URIs and dates too; that
// every result's rule is the one that its index points at; and that a log broken on purpose is refused, lest the check
// itself be one that cannot fail.
import {readFileSync} from "node:fs";
import {basename} from "node:path";
import Ajv from "ajv-draft-04";
import formats from "ajv-formats";

const [schema, ...logs] = process.argv.slice(2);
// The standard's own pattern of languages has a bracket too many, which only patterns without Unicode's rules bear.
const ajv = new Ajv({allErrors: true, strict: false, unicodeRegExp: false});
formats(ajv);
const valid = ajv.compile(JSON.parse(readFileSync(schema, "utf8")));
let passed = 0;
const faults = [];
const holds = (what, good, said) => (good ? passed++ : faults.push(`${what}: ${said}`));
const told = () => (valid.errors ?? []).slice(0, 5).map((e) => `${e.instancePath || "/"} ${e.message}`).join("; ");

const BREAKS = {
    "a level that there is none of": (log) => (log.runs[0].results[0].level = "fatal"),
    "a key of its own": (log) => (log.runs[0].results[0].severity = 1),
    "no message": (log) => delete log.runs[0].results[0].message,
    "a line before the first": (log) => (log.runs[0].results[0].locations[0].physicalLocation.region.startLine = 0),
    "no reference for a URI": (log) => (log.runs[0].results[0].locations[0].physicalLocation.artifactLocation.uri = "a b"),
    "no tool": (log) => delete log.runs[0].tool,
};

for (const path of logs) {
    const text = readFileSync(path, "utf8"), name = basename(path);
    const log = JSON.parse(text);
    holds(name, valid(log), told());
    const run = log.runs[0];
    holds(`${name}: results`, run.results.length > 0, "there are none");
    const rules = run.tool.driver.rules;
    for (const r of run.results) holds(`${name}: ${r.ruleId}`, rules[r.ruleIndex]?.id === r.ruleId, "is not the rule at its index");
    for (const [what, cut] of Object.entries(BREAKS)) {
        const broken = JSON.parse(text);
        cut(broken);
        holds(`${name} with ${what}`, !valid(broken), "is taken for valid");
    }
}
holds("logs", logs.length > 0, "there are none");
faults.forEach((f) => console.log(`sarif: ${f}`));
console.log(`sarif: ${logs.length} logs, ${passed} passed, ${faults.length} failed`);
process.exit(faults.length ? 1 : 0);
