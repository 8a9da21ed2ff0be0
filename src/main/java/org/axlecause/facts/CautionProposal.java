package org.axlecause.facts;

/**
 * A caution that the vehicle or the work calls for.
 *
 * @param caution the caution
 * @param because ground
 */
public record CautionProposal(CautionCode caution, Because because) implements Conclusion {

    @Override
    public String shown() {
        return caution.toString();
    }
}
