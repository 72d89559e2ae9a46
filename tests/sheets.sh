#!/bin/sh
# sh tests/sheets.sh build/galeward: HTML, PDF and SVG as files: what they hold, by programs that others wrote; names
# that would be markup; how large they grow. From the root of the sources.
program=$(cd "$(dirname "$1")" && pwd)/$(basename "$1")
root=$(pwd)
missing=""
for tool in qpdf pdfinfo pdffonts pdftotext xmllint; do command -v $tool >/dev/null 2>&1 || missing="$missing $tool"; done
[ -z "$missing" ] || { echo "sheets: cannot be tested without:$missing (Debian: qpdf poppler-utils libxml2-utils)"; exit 1; }
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
cd "$work" || exit 1
passed=0 failed=0

holds() { # what, condition that must be true
    if eval "$2"; then passed=$((passed + 1)); else
        echo "sheets: $1: not so: $2"; failed=$((failed + 1))
    fi
}
written() { # what, arguments...: an answer, nothing said
    what=$1
    shift
    "$program" "$@" 2>err
    status=$?
    holds "$what" '[ $status -le 1 ] && [ ! -s err ]'
    [ ! -s err ] || head -c 600 err
}
# As XML: what HTML leaves open is closed. A name that became markup breaks it, or brings an element that is not ours.
parses() {
    sed 's/<meta \([^>]*\)>/<meta \1\/>/g; s/<wbr>/<wbr\/>/g' "$1" | xmllint --noout --huge - 2>err && [ ! -s err ]
}
elements() { grep -o '<[a-zA-Z][a-zA-Z0-9]*' "$1" | sort -u; }
outlines() { qpdf --json --json-key=outlines "$1" | sed -n 's/^ *"title": "\(.*\)",\{0,1\}$/\1/p'; }
headings() { grep -o '<h[12][ >][^<]*<' "$1" | sed 's/^[^>]*>//; s/<$//; s/&lt;/</g; s/&gt;/>/g; s/&amp;/\&/g'; }
pages() { pdfinfo "$1" | sed -n 's/^Pages: *//p'; }

sound() { # a PDF: structure, fonts, text, page size; nothing that readers complain of
    pdf=$1
    qpdf --check "$pdf" >told 2>&1
    holds "$pdf: its structure" '[ $? = 0 ] && ! grep -qi warning told'
    pdffonts "$pdf" 2>err | sed 1,2d >fonts
    holds "$pdf: fonts" '[ -s fonts ] && [ ! -s err ]'
    holds "$pdf: each font embedded, a part of it, with its letters" \
        '[ "$(awk '"'"'{print $(NF-4) $(NF-3) $(NF-2)}'"'"' fonts | sort -u)" = yesyesyes ]'
    pdftotext "$pdf" text 2>err
    holds "$pdf: its text" '[ -s text ] && [ ! -s err ]'
    pdfinfo "$pdf" >info 2>err
    holds "$pdf: title" '[ ! -s err ] && grep -q "^Title: .*[A-Za-z]" info'
    holds "$pdf: A4" 'grep -q "^Page size: .*A4" info'
    n=$(pages "$pdf")
    holds "$pdf: number on each page" \
        '[ "$(grep -c "^page [0-9]* of $n\$" text)" = "$n" ]'
}

# First page 0; demands, candidates, comments, readings 2; derivations 3; what was put in 4; sources 5; not checked 6; cautions 7.
parts_of() {
    headings "$1" | sed 1d | sed -E 's/^(Why|What is missing|What fails|What is not shown, and whom to ask)$/0/
        s/^D[0-9]+ .*/3/; s/^(Warnings|Assumptions)$/4/; s/^Sources$/5/; s/^Not checked here$/6/; s/^(Caution|Made by)$/7/
        s/^[^0-7].*|^[0-9]+[.a-z ].*|^..+/2/'
}
# In reading order: the lines of the page of text, one after the other, wherever the PDF breaks its lines.
one_line() { tr -s ' \n\f' ' ' <"$1"; }
in_order() { # text in one line, lines that are looked for in it
    awk 'NR == FNR { text = text $0; next }
        { at = index(substr(text, from + 1), $0); if (!at) { print "not after the one before: " $0; bad = 1 }
          else from += at } END { exit bad || !FNR }' "$1" "$2"
}

# Where figures of a page lead, of HTML: a row's link to a derivation ("D2 east/transom/28"), a flag's on a drawing. The
# heading of that derivation names the place.
one_a_line() { tr '\n' ' ' <"$2" | sed "s/<wbr>//g; s/<$1[ >]/\n&/g; s/<\/$1>/&\n/g"; }
led() {
    one_a_line tr "$1" | sed -nE 's/^<tr.*data-of="Where">([^<]*)<.*Steps: <a href="#(D[0-9]+)".*/\2 \1/p'
    sed 's/<[^>]*>//g' "$1" | grep -o 'D[0-9]*, of [^,]*, on which it leans' | sed -E 's/, of (.*), on .*/ \1/'
    sed 's/<[^>]*>/ /g' "$1" | tr -s ' \n' '  ' | grep -o 'Steps: D[0-9]*, or explain [^ ,;]*' |
        sed -E 's/Steps: (D[0-9]+), or explain /\1 /; s/\.$//'
}
leads_home() { # HTML
    grep -o '<h2 id="D[0-9]*">[^<]*' "$1" | sed 's/.*>//' >derivations
    led "$1" >led
    grep -o 'href="#D[0-9]*"' "$1" | sed 's/.*#\(D[0-9]*\)"/\1/' >targets
    awk 'FILENAME == "derivations" { head[$1] = $0 ","; next }
        !($1 in head) { print $1 " is nowhere"; bad = 1; next }
        FILENAME == "led" && !index(head[$1], substr($0, length($1) + 2) ",") { print "leads elsewhere: " $0; bad = 1 }
        END { exit bad }' derivations led targets
}
# Every row that leads nowhere says by whom its figures are given, or the table is followed by the command for them.
unled() { # HTML: captions of tables of figures with neither
    one_a_line table "$1" | awk '
        /^<table/ { head = body = $0; sub(/<\/thead>.*/, "", head); sub(/.*<\/thead>/, "", body); getline after
            gsub(/<[^>]*>/, "\n", after); sub(/^[ \n]*/, "", after)
            figures = head ~ />(Use|Required|In|Out|In [a-zN]+|ASD in [a-zN]+|M [a-zN-]+)</
            if (!figures || after ~ /^(Steps: galeward|At the greatest)/) next
            rows = gsub(/<tr/, "", body); own = gsub(/Steps: |, given by |nothing is asked/, "", body)
            if (own < rows) print head }'
}

# Every command's pages of the demo projects ------------------------------------------------------------------------

both() { # name, arguments...: HTML and PDF of one result
    sheet=$1
    shift
    written "$sheet.html" "$@" -o "$sheet.html"
    written "$sheet.pdf" "$@" -o "$sheet.pdf"
    written "$sheet.pdf again" "$@" -o again.pdf
    holds "$sheet: the same bytes twice" 'cmp -s "$sheet.pdf" again.pdf'
    holds "$sheet.html parses" 'parses "$sheet.html"'
    hash=$(grep -o 'result [0-9a-f]\{8\}' "$sheet.html" | tail -1)
    holds "$sheet: the result in the foot" '[ -n "$hash" ]'
    sound "$sheet.pdf"
    holds "$sheet: the result on each page" '[ "$(grep -c "^$hash, Galeward" text)" = "$(pages "$sheet.pdf")" ]'
    headings "$sheet.html" | sed "1{h;d};\${p;x}" >headings # qpdf names what stands below first
    outlines "$sheet.pdf" >outlines
    holds "$sheet: bookmarks are the headings" 'cmp -s headings outlines'
    parts_of "$sheet.html" >parts
    holds "$sheet: the parts of a page in their order, the last four always" \
        'sort -c -n parts 2>err && [ "$(sort -u parts | tail -4 | tr -d "\n")" = 4567 ]'
    pdftotext "$sheet.pdf" text
    one_line text >flat
    headings "$sheet.html" >wanted
    holds "$sheet: read in that order in the PDF" 'in_order flat wanted'
    links=$(qpdf --qdf --object-streams=disable "$sheet.pdf" - | grep -ac "/Subtype /Link")
    named=$(pdfinfo -dests "$sheet.pdf" | grep -c '"D[0-9]*"$')
    holds "$sheet: each derivation is a place in the PDF, with a link to it" \
        '[ "$named" = "$(grep -c "^D[0-9]" headings)" ] && { [ "$named" = 0 ] || [ "$links" -ge "$named" ]; }'
    holds "$sheet.html: each link to a derivation has its place there, which names what it is of" 'leads_home "$sheet.html"'
    case $1 in demand | check | select | explain)
        holds "$sheet.html: each table of figures leads to their steps" '[ -z "$(unled "$sheet.html")" ]' ;;
    esac
    holds "$sheet.html: a caption to each table" \
        '[ "$(grep -c "<table" "$sheet.html")" = "$(grep -c "<caption>..*[0-9] rows\{0,1\}\." "$sheet.html")" ]'
    pdftotext -l 1 "$sheet.pdf" text
    case $sheet in
    *-explain) holds "$sheet: a picture on the first page" 'grep -q "[0-9] ft by [0-9]" text' ;;
    *) holds "$sheet: a picture on the first page" 'grep -q "Seen from outside" text' ;;
    esac
    pdftotext "$sheet.pdf" text
    head=$(tail -1 headings | cut -c1-40)
    holds "$sheet: the head on each page" '[ "$(grep -cF "$head" text)" -gt "$(pages "$sheet.pdf")" ]'
}
for name in tern-street gull-point; do
    project=$root/projects/$name.yaml
    for command in demand check select specify; do both $name-$command $command "$project"; done
    lite=$("$program" explain "$project" | grep -o '[a-z]*/lite/[0-9]*' | head -1)
    both $name-explain explain "$project" "$lite"
    for command in demand check specify; do
        written "$name-$command.svg" $command "$project" -o $name-$command.svg
        holds "$name-$command.svg parses" 'xmllint --noout $name-$command.svg'
    done
done
tern=$root/projects/tern-street.yaml
both tern-street-review review "$tern" "$root/projects/submittals/tern-street-02.yaml"
written "tern-street-review.svg" review "$tern" "$root/projects/submittals/tern-street-02.yaml" -o tern-street-review.svg
holds "tern-street-review.svg parses" 'xmllint --noout tern-street-review.svg'
both tern-street-inspect inspect "$tern" --system "$root/projects/systems/heron.yaml"
both stint-court-inspect inspect "$root/tests/golden/inspect/stint-court.yaml" "$root/tests/golden/inspect/readings.csv" \
    --set "readings={columns: {column: Bay, item: What, value: Measured, by: Crew}}"

for name in tern-street gull-point; do
    holds "$name-check.html: rows lead to derivations" '[ "$(led $name-check.html | grep -c "^D")" -ge 3 ]'
    holds "$name-check.html: the command for other figures, whole" \
        'sed "s/<[^>]*>//g" $name-check.html | grep -q "^Steps: galeward explain $root/projects/$name.yaml [a-z]*/"'
done
sentences() { # PDF, text page, pattern of the lines that are looked for
    pdftotext "$1" text
    one_line text >flat
    grep -E "$3" "$2" | sed 's/^ *- //' >wanted
    in_order flat wanted
}
"$program" check "$tern" >page
holds "check: its sentences, in their order" \
    'sentences tern-street-check.pdf page "^- (Heron 75 passes|Plover 60 fails by 14)|^Below: each candidate"'
"$program" explain "$tern" "$("$program" explain "$tern" | grep -o '[a-z]*/lite/[0-9]*' | head -1)" >page
holds "explain: its sentences, in their order" \
    'sentences tern-street-explain.pdf page "^(Project Tern|Nearest outside corner|Effective wind area|Governs: given)"'
pdftotext tern-street-explain.pdf text
one_line text >flat
holds "explain: a formula reads from left to right" 'grep -q "q *h *= *c *K" flat'

# Names that would be markup, that turn the line, that have no end ---------------------------------------------------

hostile() { # file, name as YAML writes it between double quotes
    cat >"$1.yaml" <<X
galeward: 1
units: us
project: {name: "$2", number: "$2", risk_category: II}
codes: {building: ibc-2021}
site: {basic_wind_speed: 120 mph, exposure: B, hurricane_prone: false}
buildings: [{name: "$2", roof_height: 39 ft, least_width: 200 ft, enclosure: enclosed}]
walls:
  - name: "$2"
    building: "$2"
    width: 30 ft
    floors: [0 ft, 13 ft, 26 ft]
    top: 39 ft
    ends: [corner, corner]
    columns: {count: 6, width: 5 ft}
    rows: [{height: 4 ft, lite: "$2"}, {height: rest, lite: vision}]
lites:
  vision: {layers: [{glass: 6 mm, treatment: heat_strengthened}], cost: 20 per ft2}
  ? "$2"
  : {layers: [{glass: 6 mm, treatment: tempered}], component: spandrel, cost: 20 per ft2}
given:
  - {zone: 4, area: 10 ft2, inward: 31 psf, outward: 35 psf, level: strength, source: "$2"}
candidates: [$1-system.yaml]
X
    cat >"$1-system.yaml" <<X
galeward: 1
units: us
system: {name: "$2", kind: stick, glazing: captured}
cost: 64 per ft2
ratings: [{test: structural, positive: 30 psf, negative: 20 psf, tested: {lite_width: 5 ft, lite_height: 9 ft}, report: "$2"}]
options: [{name: "$2", change: {ratings: []}, of: transom, cost: 5 per ft, group: "$2"}]
X
}
taken() { # file, the name itself, words of it that every file holds as text
    for command in demand check select specify explain; do
        element=
        [ $command != explain ] || element=$2/lite/1
        written "$1 $command html" $command "$1.yaml" ${element:+"$element"} -o $command.html
        written "$1 $command pdf" $command "$1.yaml" ${element:+"$element"} -o $command.pdf
        holds "$1 $command html parses" 'parses $command.html'
        elements $command.html >found
        elements plain-$command.html >usual
        holds "$1 $command: no element by a name" '[ -z "$(comm -23 found usual)" ]'
        qpdf --check $command.pdf >told 2>&1
        holds "$1 $command pdf: its structure" '[ $? = 0 ]'
        pdftotext $command.pdf text 2>err
        tr -d ' \n\f' <text >flat
        holds "$1 $command pdf: the name is text" '[ ! -s err ] && grep -qF "$(printf %s "$3" | tr -d " ")" flat'
        # a name without an end takes four pages, once
        holds "$1 $command pdf: pages" '[ "$(pages $command.pdf)" -lt 20 ]'
    done
    for command in demand check; do
        written "$1 $command svg" $command "$1.yaml" -o $command.svg
        holds "$1 $command svg parses" 'xmllint --noout $command.svg 2>err && [ ! -s err ]'
        elements $command.svg >found
        elements plain-$command.svg >usual
        holds "$1 $command svg: no element by a name" '[ -z "$(comm -23 found usual)" ]'
    done
}

hostile plain east
for command in demand check select specify; do "$program" $command plain.yaml -o plain-$command.html; done
"$program" explain plain.yaml east/lite/1 -o plain-explain.html
for command in demand check; do "$program" $command plain.yaml -o plain-$command.svg; done
hostile script '<script>alert(1)</script>'
taken script '<script>alert(1)</script>' '<script>alert(1)</script>'
hostile closing ']]> &amp; <b a=\"x'
taken closing ']]> &amp; <b a="x' ']]> &amp; <b a="x'
hostile turned 'west\u202Etsae\u2066'
taken turned "$(printf 'west\342\200\256tsae\342\201\246')" west
hostile controls 'a\u0007b\u001B[31m'
taken controls "$(printf 'a\007b\033[31m')" '[31m'
long=$(printf '%10000s' '' | tr ' ' W)
hostile long "$long"
taken long "$long" WWWWWWWWWWWW
# none of what was typed for the terminal or the line is left
for file in check.html check.svg demand.html; do
    "$program" ${file%.*} turned.yaml -o $file
    holds "$file: no mark that turns the line" '! grep -q "$(printf "\342\200\256")" $file'
    "$program" ${file%.*} controls.yaml -o $file
    holds "$file: no control character" '! tr -d "\n\t" <$file | grep -q "[[:cntrl:]]"'
done

# A tower of 50,000 lites, with a dozen candidates -------------------------------------------------------------------

tower() { # columns, floors, walls...
    floors=$(awk -v n="$2" 'BEGIN { for (i = 0; i < n; i++) printf "%s%d", i ? ", " : "", 13 * i }')
    height=$((13 * $2)) columns=$1
    shift 2
    names=""
    i=0
    while [ $i -lt 12 ]; do
        names="$names${names:+, }c$i.yaml"
        cat >c$i.yaml <<X
galeward: 1
units: us
system: {name: Candidate $i, kind: stick, glazing: captured}
ratings: [{test: structural, positive: $((40 + 4 * i)) psf, negative: $((40 + 4 * i)) psf, tested: {lite_width: 5 ft, lite_height: 9 ft}, report: L-$i}]
X
        i=$((i + 1))
    done
    cat <<X
galeward: 1
units: us
project: {name: Tower, risk_category: II}
codes: {building: ibc-2021}
site: {basic_wind_speed: 120 mph, exposure: B, hurricane_prone: false}
buildings: [{name: main, roof_height: $height, least_width: 200, enclosure: enclosed}]
lites:
  vision: {layers: [{glass: 6 mm, treatment: heat_strengthened}]}
  spandrel: {layers: [{glass: 6 mm, treatment: tempered}], component: spandrel}
candidates: [$names]
walls:
X
    for wall; do
        echo "  - {name: $wall, building: main, width: $((5 * columns)), top: $height, floors: [$floors], ends: [corner, corner], columns: {count: $columns, width: 5}, rows: [{height: 4, lite: spandrel}, {height: rest, lite: vision}]}"
    done
}
large() { # command
    file=tower-$1
    for format in html pdf; do written "tower, $1 $format" $1 tower.yaml -o $file.$format; done
    holds "$file: HTML under 5 MB" '[ "$(wc -c <$file.html)" -lt 5000000 ]'
    holds "$file: PDF under 100 pages" '[ "$(pages $file.pdf)" -lt 100 ]'
}
tower 300 84 e >tower.yaml
large check
tower 57 40 n e s w a b c d f g h >tower.yaml
large demand
holds "a long table holds the worst" 'grep -q "The worst 25 of [0-9]*. And [0-9]* more: galeward demand tower.yaml" tower-demand.html'
"$program" demand tower.yaml >page
holds "the page of text holds every row" '! grep -q "The worst 25" page'
echo "sheets: $passed passed, $failed failed"
[ $failed = 0 ]
