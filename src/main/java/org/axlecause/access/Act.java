package org.axlecause.access;

import java.util.Locale;

/** What somebody did that is no event of a case. */
public enum Act {
    KEY_MADE,
    KEY_REVOKED,
    SITE_SAVED,
    PRICE_LIST_ADDED,
    POLICY_DRAFT_WRITTEN,
    POLICY_PUBLISHED,
    POLICY_TRIAL_BEGUN,
    POLICY_TRIAL_CANCELLED,
    CAUSE_WEIGHTS_PROPOSED,
    CAUSE_WEIGHTS_WITHDRAWN,
    CAUSE_WEIGHTS_PUBLISHED,
    SUBSCRIPTION_MADE,
    SUBSCRIPTION_CHANGED,
    SUBSCRIPTION_DELETED,
    SUBSCRIPTION_SECRET_CHANGED,
    EVENTS_REPLAYED,
    CASE_JUDGED_AGAIN,
    CASE_REMOVED,
    PERSONAL_DATA_READ,
    PERSONAL_DATA_ERASED;

    /** The code on the wire. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
