/* Short forms for field tables: of files, of calc cases and their answers, of results. */
#ifndef GALEWARD_FIELDS_H
#define GALEWARD_FIELDS_H

#include "galeward/record.h"

#define COUNT(array) (sizeof(array) / sizeof *(array))
/* The general form: a key, and the member of the struct that it sets or shows. */
#define FIELD(struct_, key_, member_, type_, ...)                                                                      \
    {                                                                                                                  \
        .key = key_, .type = type_, .offset = offsetof(struct struct_, member_), __VA_ARGS__                           \
    }
/* In: the key is the member's name; then what the field asks (flags, limits, default, help) by name. */
#define F(struct_, member_, type_, ...) FIELD(struct_, #member_, member_, type_, __VA_ARGS__)
#define NUM(struct_, member_, dim_, ...) F(struct_, member_, GW_T_NUMBER, .dim = dim_, __VA_ARGS__)
#define PICK(struct_, member_, choices_, ...) F(struct_, member_, GW_T_CHOICE, .choices = choices_, __VA_ARGS__)
/* A key is written as its readers know it: "utilisation", "deflection_utilisation" and "stress_centre" are fixed so;
 * all else, members and texts, is US spelling.
 *
 * Out: nothing is asked, so that a key and its help are all. OUT is a number, OUT_PART a record; _MANY, _PARTS lists.
 */
#define OUT(struct_, key_, member_, dim_, help_) FIELD(struct_, key_, member_, GW_T_NUMBER, .dim = dim_, .help = help_)
#define OUT_MANY(struct_, key_, member_, dim_, help_)                                                                  \
    FIELD(struct_, key_, member_, GW_T_NUMBER, .dim = dim_, .flags = GW_MANY, .help = help_)
#define OUT_WHOLE(struct_, key_, member_, help_) FIELD(struct_, key_, member_, GW_T_INTEGER, .help = help_)
#define OUT_YES_NO(struct_, key_, member_, help_) FIELD(struct_, key_, member_, GW_T_BOOL, .help = help_)
#define OUT_TEXT(struct_, key_, member_, help_) FIELD(struct_, key_, member_, GW_T_TEXT, .help = help_)
#define OUT_SENTENCE(struct_, key_, member_, help_) FIELD(struct_, key_, member_, GW_T_MESSAGE, .help = help_)
#define OUT_PICK(struct_, key_, member_, choices_, help_)                                                              \
    FIELD(struct_, key_, member_, GW_T_CHOICE, .choices = choices_, .help = help_)
#define OUT_PART(struct_, key_, member_, record_, help_)                                                               \
    FIELD(struct_, key_, member_, GW_T_RECORD, .record = record_, .help = help_)
#define OUT_PARTS(struct_, key_, member_, record_, help_)                                                              \
    FIELD(struct_, key_, member_, GW_T_RECORD, .record = record_, .flags = GW_MANY, .help = help_)
/* What a function makes of the whole struct. */
#define OUT_SAID(key_, say_, help_, ...)                                                                               \
    {                                                                                                                  \
        .key = key_, .type = GW_T_SAID, .say = say_, .help = help_, __VA_ARGS__                                        \
    }
/* The field lies in another struct, to which a pointer leads, or two, or three. */
#define THROUGH(struct_, member_) .hops = 1, .via = {offsetof(struct struct_, member_)}
#define THROUGH2(a_, member_, b_, next_) .hops = 2, .via = {offsetof(struct a_, member_), offsetof(struct b_, next_)}
#define THROUGH3(a_, member_, b_, next_, c_, last_)                                                                    \
    .hops = 3, .via = {offsetof(struct a_, member_), offsetof(struct b_, next_), offsetof(struct c_, last_)}
/* Where the record stands in its file, for faults found later. */
#define PLACE(struct_)                                                                                                 \
    {                                                                                                                  \
        .type = GW_T_NODE, .offset = offsetof(struct struct_, node)                                                    \
    }
#define RECORD(name_, struct_, fields_, ...)                                                                           \
    {                                                                                                                  \
        .name = name_, .size = sizeof(struct struct_), .fields = fields_, .n = COUNT(fields_), __VA_ARGS__             \
    }
#define LIMITS(a, b) .least = (a), .greatest = (b)
#define LIKELY(a, b) .likely_least = (a), .likely_most = (b)
/* Plausible sizes, m. */
#define BUILDING_HEIGHT LIMITS(0.1, 1000), LIKELY(2.4, 450)
#define PRESSURE_RANGE LIMITS(0, 1e6), LIKELY(100, 15000)

#endif
