package org.axlecause.facts;

/** What is open in a case. */
public enum QuestionCode {
    VEHICLE_MISSING,
    AXLE_UNKNOWN,
    PRESENTATIONS_DIFFER,
    WITHDRAWAL_TARGET_ELSEWHERE,
    WITHDRAWAL_TARGET_MISSING,
    PLACE_NOT_LOOKED_AT,
    DOUBTFUL_TEST,
    EVIDENCE_UNEXPLAINED,
    CONTRADICTION,
    SCOPE_PROVISIONAL,
    OUTSIDE_SCOPE_RANGE,
    MASS_MISSING,
    LIMIT_MISSING,
    SENDER_DISAGREES,
    JUDGEMENT_CHANGED_SINCE_CLOSING,
    REGIME_UNKNOWN,
    LINE_UNKNOWN,
    STEP_UNKNOWN,
    POLICY_UNKNOWN,
    UPSTREAM_UNPROVEN,
    TOO_CLOSE_TO_CALL,
    PLACE_UNCLEAR,
    COMPLAINT_UNANSWERED;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
