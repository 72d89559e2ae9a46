#!/bin/sh
# sh tests/browser/run.sh build/galeward BUILD: every command's page of the demo projects in a real browser, and the logs
# of reviews against the schema of SARIF. Needs node, npm and chromium (Debian: nodejs npm chromium, or CHROMIUM=path); what is missing is named, and nothing passes then.
program=$(cd "$(dirname "$1")" && pwd)/$(basename "$1")
pages=$2/browser
root=$(pwd)
missing=""
for tool in node npm pdfinfo; do command -v $tool >/dev/null 2>&1 || missing="$missing $tool"; done
browser=${CHROMIUM:-$(command -v chromium || command -v chromium-browser || command -v google-chrome)}
[ -n "$browser" ] || missing="$missing chromium"
if [ -n "$missing" ]; then
    echo "browser: cannot be tested without:$missing" >&2
    exit 1
fi
rm -rf "$pages"
mkdir -p "$pages" || exit 1
pages=$(cd "$pages" && pwd)
(cd tests/browser && npm ci --no-audit --no-fund --silent) || { echo "browser: npm ci failed" >&2; exit 1; }

made=0
page() { # name, arguments...: a page; 0 and 1 are answers
    name=$1
    shift
    "$program" "$@" -o "$pages/$name.html" || [ $? = 1 ] || { echo "browser: $* failed" >&2; exit 1; }
    made=$((made + 1))
}
first() { "$program" explain "$1" 2>/dev/null | grep -o "$2" | head -1; }
for project in tern-street gull-point; do
    file=$root/projects/$project.yaml
    for command in demand check select specify; do page "$project-$command" $command "$file"; done
    page "$project-explain" explain "$file" "$(first "$file" '[a-z]*/lite/[0-9]*')"
    page "$project-explain-mullion" explain "$file" "$(first "$file" '[a-z]*/mullion/[0-9]*')"
done
tern=$root/projects/tern-street.yaml
page tern-street-review review "$tern" "$root/projects/submittals/tern-street-02.yaml"
page tern-street-review-2 review "$tern" "$root/projects/submittals/tern-street-02-revision-2.yaml"
page tern-street-specify-si specify "$tern" --units si
page tern-street-sheet inspect "$tern" --system "$root/projects/systems/heron.yaml"
page tern-street-sources check "$tern" --sources
page tern-street-si demand "$tern" --units si
court=$root/tests/golden/inspect
page stint-court-readings inspect "$court/stint-court.yaml" "$court/readings.csv" \
    --set "readings={columns: {column: Bay, item: What, value: Measured, by: Crew}}"
page stint-court-sheet inspect "$court/stint-court.yaml"
log() { # name, arguments...: the log of a review
    name=$1
    shift
    "$program" review "$tern" "$@" -o "$pages/$name.sarif" || [ $? = 1 ] || { echo "browser: review $* failed" >&2; exit 1; }
}
log first "$root/projects/submittals/tern-street-02.yaml"
log second "$root/projects/submittals/tern-street-02-revision-2.yaml" --previous "$root/tests/golden/review.json"
log decided "$root/projects/submittals/tern-street-02.yaml" --previous "$root/tests/golden/review-earlier.json" \
    --set "decisions=[{number: 2, disposition: no exception taken, by: R. Example, reason: anchor tested again}]"
node tests/browser/sarif.mjs "$root/tests/reference/sarif-2.1.0.json" "$pages"/*.sarif || exit 1
echo "browser: $made pages, $("$browser" --version 2>/dev/null | tail -1)"
cd tests/browser && node check.mjs "$browser" "$pages"
