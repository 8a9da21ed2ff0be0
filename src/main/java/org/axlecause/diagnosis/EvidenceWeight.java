package org.axlecause.diagnosis;

import java.math.BigDecimal;
import org.axlecause.facts.Place;

/**
 * How strongly a piece of evidence speaks for or against a cause, the other causes being as likely as they are once all
 * is weighed. With the prior the weights add up to the odds of the cause where no rival shows the same; else they add up
 * to less or more, since the rivals then depend on each other.
 *
 * @param code symptom or finding; {@code prior} for what age and layout say before anything is seen
 * @param place where
 * @param shows whether it was seen; otherwise it was looked for and is not there
 * @param decibans ten times the decimal logarithm of the odds ratio; for the cause above 0
 * @param says the evidence in words
 */
public record EvidenceWeight(String code, Place place, boolean shows, BigDecimal decibans, String says) {

    static final String PRIOR = "prior";
}
