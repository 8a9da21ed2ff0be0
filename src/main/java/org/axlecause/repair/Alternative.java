package org.axlecause.repair;

import java.util.List;

/**
 * What a line costs with another part.
 *
 * @param name name of the part in the price list
 * @param prices price in each currency that it takes, the one of the list first
 */
public record Alternative(String name, List<Price> prices) {

    public Alternative {
        prices = List.copyOf(prices);
    }
}
