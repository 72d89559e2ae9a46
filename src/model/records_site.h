/* The record of a project's site. */
#ifndef GALEWARD_MODEL_RECORDS_SITE_H
#define GALEWARD_MODEL_RECORDS_SITE_H

#include "galeward/record.h"

extern const struct gw_record gw_site_record;

#endif
