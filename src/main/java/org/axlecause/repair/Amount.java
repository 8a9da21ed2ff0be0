package org.axlecause.repair;

/**
 * An amount of money.
 *
 * @param amount decimal with the digits that the currency has
 * @param currency ISO 4217 code
 */
public record Amount(String amount, String currency) {}
