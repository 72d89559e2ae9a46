#include "report/markup.h"

void gw_markup_text(struct gw_text *out, const char *text)
{
    for (; *text; text++) {
        if (*text == '<') gw_text_add(out, "&lt;");
        else if (*text == '>') gw_text_add(out, "&gt;");
        else if (*text == '&') gw_text_add(out, "&amp;");
        else if (*text == '"') gw_text_add(out, "&quot;");
        else gw_text_bytes(out, text, 1);
    }
}
