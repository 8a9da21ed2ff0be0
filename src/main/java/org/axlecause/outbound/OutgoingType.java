package org.axlecause.outbound;

import java.util.Optional;
import java.util.stream.Stream;

/** What others are told. */
enum OutgoingType {
    /** A case was judged and its document has changed. */
    CASE_JUDGED("org.axlecause.case.judged.v1"),
    /** The repair of a case is proven now. */
    CASE_VERIFIED("org.axlecause.case.verified.v1"),
    /** A version of a policy was published. */
    POLICY_PUBLISHED("org.axlecause.policy.published.v1");

    private final String code;

    OutgoingType(String code) {
        this.code = code;
    }

    /** What it tells about; events about one of a kind are sent in their order. */
    String aggregate() {
        return this == POLICY_PUBLISHED ? "policy" : "case";
    }

    /** The type with this code; empty when there is none. */
    static Optional<OutgoingType> of(String code) {
        return Stream.of(values()).filter(type -> type.code.equals(code)).findFirst();
    }

    /** The code on the wire. */
    @Override
    public String toString() {
        return code;
    }
}
