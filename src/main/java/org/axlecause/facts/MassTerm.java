package org.axlecause.facts;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * A mass to which the forces may be related; the first of a regime's list that is known counts.
 *
 * @param basis kind of mass
 * @param kilograms the mass; null where the test itself must weigh it
 * @param name name of the basis as shown, with how it is verified
 */
public record MassTerm(MassBasis basis, @Nullable BigDecimal kilograms, String name) {}
