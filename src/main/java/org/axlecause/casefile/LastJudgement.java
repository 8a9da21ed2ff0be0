package org.axlecause.casefile;

/**
 * How a case stood after its last judgement.
 *
 * @param status highest status that held
 * @param digest what its document said; nothing where none succeeded
 */
record LastJudgement(String status, DocumentDigest digest) {}
