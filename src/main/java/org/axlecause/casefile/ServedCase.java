package org.axlecause.casefile;

/**
 * A case document on its way out.
 *
 * @param json the document
 * @param tag strong entity tag of exactly this document, without quotes
 */
public record ServedCase(String json, String tag) {}
