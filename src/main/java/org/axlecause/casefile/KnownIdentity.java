package org.axlecause.casefile;

/**
 * What was accepted under an identity.
 *
 * @param digest SHA-256 of its content in hex
 * @param reference the case it went to
 */
public record KnownIdentity(String digest, String reference) {}
