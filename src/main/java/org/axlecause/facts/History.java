package org.axlecause.facts;

import java.util.List;

/**
 * Everything recorded about one case, in the order that counts, withdrawn entries included.
 *
 * @param reference case reference, unique inside the tenant
 * @param entries entries sorted by time, source and id
 */
public record History(String reference, List<Recorded> entries) {

    public History {
        entries = entries.stream().sorted().toList();
    }
}
