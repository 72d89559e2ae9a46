#include "report/links.h"

#include <stdlib.h>
#include <string.h>

static bool is_digit(char c) { return c >= '0' && c <= '9'; }

long gw_derivation_number(const struct gw_block *block)
{
    const bool heads = block->kind == GW_HEADING && block->level == 2 && block->text[0] == 'D';
    return heads && is_digit(block->text[1]) ? strtol(block->text + 1, NULL, 10) : 0;
}

long gw_count_derivations(const struct gw_report *report)
{
    long n = 0;
    for (size_t i = 0; i < report->n; i++) n += gw_derivation_number(&report->blocks[i]) == n + 1;
    return n;
}

bool gw_next_reference(struct gw_reference *out, const char *text, size_t from, long derivations)
{
    for (const char *at = strchr(text + from, 'D'); at; at = strchr(at + 1, 'D')) {
        char *end;
        const bool alone = at == text || at[-1] == ' ';
        if (!alone || !is_digit(at[1]) || at[1] == '0') continue;
        const long number = strtol(at + 1, &end, 10);
        if (number < 1 || number > derivations || (*end && !strchr(" ,.;", *end))) continue;
        *out = (struct gw_reference){(size_t)(at - text), (size_t)(end - text), number};
        return true;
    }
    return false;
}
