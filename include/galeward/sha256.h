/* Fingerprints of input files: SHA-256 (FIPS 180-4). */
#ifndef GALEWARD_SHA256_H
#define GALEWARD_SHA256_H

#include <stddef.h>

#ifdef __cplusplus
extern "C" {
#endif

/* 64 lower-case hexadecimal digits and a NUL. */
enum { GW_SHA256_SIZE = 65 };
void gw_sha256(char hex[GW_SHA256_SIZE], const void *bytes, size_t length);

#ifdef __cplusplus
}
#endif

#endif
