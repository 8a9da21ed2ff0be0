package org.axlecause.facts;

/**
 * A complaint that stands.
 *
 * @param code what is reported
 */
public record Complaint(ComplaintCode code) implements Shown {

    @Override
    public String shown() {
        return "complaint: " + code;
    }
}
