package org.axlecause.casefile;

import java.util.Currency;

/** The currencies of ISO 4217. */
final class Currencies {

    private Currencies() {}

    static boolean isKnown(String code) {
        return Currency.getAvailableCurrencies().stream()
                .anyMatch(currency -> currency.getCurrencyCode().equals(code));
    }
}
