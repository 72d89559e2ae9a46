#!/bin/sh
# fields.md from the field tables, verification.md from the reference cases. sh docs/generate.sh PROGRAM [FOLDER]
program=$1
folder=${2:-docs}
{
    echo "# Field reference"
    echo
    echo "Generated from the field tables by \`make docs\`. A bare number takes the unit of the file's \`units: us | si\`; how values may be written: [values.md](values.md)."
    echo
    "$program" schema project --format md
    echo
    "$program" schema system --format md
    echo
    "$program" schema requirements --format md
    echo
    "$program" schema submittal --format md
    echo
    "$program" schema readings --format md
} >"$folder/fields.md"
"$(dirname "$program")/tests/reference_test" --markdown >"$folder/verification.md"
