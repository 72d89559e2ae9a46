/* SHA-256 as FIPS 180-4 writes it; the names are the standard's. */
#include "galeward/sha256.h"

#include <stdint.h>
#include <string.h>

enum { BLOCK = 64, ROUNDS = 64, WORDS = 8 };

/* Fractions of the cube roots of the first 64 primes (4.2.2), and of the square roots of the first eight (5.3.3). */
static const uint32_t K[ROUNDS] = {
    0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
    0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
    0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
    0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
    0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
    0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
    0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
    0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2,
};
static const uint32_t START[WORDS] = {
    0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19,
};

static uint32_t rotr(uint32_t x, unsigned n) { return x >> n | x << (32 - n); }

static uint32_t word_at(const unsigned char *bytes)
{
    return (uint32_t)bytes[0] << 24 | (uint32_t)bytes[1] << 16 | (uint32_t)bytes[2] << 8 | bytes[3];
}

static void schedule(uint32_t w[ROUNDS], const unsigned char *block)
{
    for (size_t t = 0; t < 16; t++) w[t] = word_at(block + 4 * t);
    for (size_t t = 16; t < ROUNDS; t++) {
        uint32_t s0 = rotr(w[t - 15], 7) ^ rotr(w[t - 15], 18) ^ w[t - 15] >> 3;
        uint32_t s1 = rotr(w[t - 2], 17) ^ rotr(w[t - 2], 19) ^ w[t - 2] >> 10;
        w[t] = s1 + w[t - 7] + s0 + w[t - 16];
    }
}

static void add_block(uint32_t hash[WORDS], const unsigned char *block)
{
    uint32_t w[ROUNDS];
    uint32_t a = hash[0], b = hash[1], c = hash[2], d = hash[3], e = hash[4], f = hash[5], g = hash[6], h = hash[7];
    schedule(w, block);
    for (size_t t = 0; t < ROUNDS; t++) {
        const uint32_t sum1 = rotr(e, 6) ^ rotr(e, 11) ^ rotr(e, 25), sum0 = rotr(a, 2) ^ rotr(a, 13) ^ rotr(a, 22);
        const uint32_t t1 = h + sum1 + ((e & f) ^ (~e & g)) + K[t] + w[t];
        const uint32_t t2 = sum0 + ((a & b) ^ (a & c) ^ (b & c));
        h = g, g = f, f = e, e = d + t1;
        d = c, c = b, b = a, a = t1 + t2;
    }
    const uint32_t v[WORDS] = {a, b, c, d, e, f, g, h};
    for (size_t i = 0; i < WORDS; i++) hash[i] += v[i];
}

/* The rest, a one bit, zeros, and the length in bits. */
static void add_tail(uint32_t hash[WORDS], const unsigned char *rest, size_t n, uint64_t length)
{
    unsigned char tail[2 * BLOCK] = {0};
    size_t size = n < BLOCK - 8 ? BLOCK : 2 * BLOCK;
    if (n) memcpy(tail, rest, n);
    tail[n] = 0x80;
    for (size_t i = 0; i < 8; i++) tail[size - 1 - i] = (unsigned char)(length * 8 >> 8 * i);
    for (size_t at = 0; at < size; at += BLOCK) add_block(hash, tail + at);
}

void gw_sha256(char hex[GW_SHA256_SIZE], const void *bytes, size_t length)
{
    static const char digits[] = "0123456789abcdef";
    const unsigned char *at = bytes;
    uint32_t hash[WORDS];
    size_t whole = length / BLOCK * BLOCK;
    memcpy(hash, START, sizeof hash);
    for (size_t i = 0; i < whole; i += BLOCK) add_block(hash, at + i);
    add_tail(hash, at + whole, length - whole, length);
    for (size_t i = 0; i < GW_SHA256_SIZE - 1; i++) hex[i] = digits[hash[i / 8] >> (28 - 4 * (i % 8)) & 0xf];
    hex[GW_SHA256_SIZE - 1] = '\0';
}
