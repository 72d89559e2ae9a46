#!/bin/sh
# docs/fields.md from the field tables, docs/verification.md from the reference cases.
program=$1
{
    echo "# Field reference"
    echo
    echo "Generated from the field tables by \`make docs\`. A bare number takes the unit of the file's \`units: us | si\`."
    echo
    "$program" schema project --format md
    echo
    "$program" schema system --format md
} >docs/fields.md
"$(dirname "$program")/tests/reference_test" --markdown >docs/verification.md
