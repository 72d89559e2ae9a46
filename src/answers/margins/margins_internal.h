/* What is put into a project's file to try a value, and the values that are tried. */
#ifndef GALEWARD_MARGINS_INTERNAL_H
#define GALEWARD_MARGINS_INTERNAL_H

#include "galeward/margins.h"

struct moves {
    const char **settings;
    size_t n, capacity;
    double pressures;
};

/* An input that is a number: its value at a factor, absent: the project has none such; and how it is put there. */
struct moved_number {
    const char *name;
    enum gw_dim dim;
    bool whole; /* only the factors at which a wall's number of columns changes */
    double (*value)(const struct gw_model *model, double factor);
    void (*put)(struct moves *out, const struct gw_model *model, struct gw_arena *arena, double factor);
};
extern const struct moved_number gw_moved_numbers[];
extern const size_t gw_n_moved_numbers;

/* An input that is a word; `index`: which building. */
struct moved_word {
    const char *name;
    const struct gw_choice *choices;
    bool of_building;
    int (*value)(const struct gw_model *model, size_t index); /* 0: not given */
    void (*put)(struct moves *out, const struct gw_model *model, struct gw_arena *arena, size_t index,
                const char *word);
};
extern const struct moved_word gw_moved_words[];
extern const size_t gw_n_moved_words;

/* The factors at which a number is tried, from its value outwards to half or to double of it. */
struct tried_factors {
    double *at;
    size_t n;
};
struct tried_factors gw_tried_factors(const struct moved_number *number, const struct gw_model *model,
                                      struct gw_arena *arena, bool up);

#endif
