package org.axlecause.pages;

import java.util.List;
import org.axlecause.access.Site;
import org.axlecause.policy.PolicyViews.DraftView;
import org.axlecause.policy.PolicyViews.VersionView;
import org.jspecify.annotations.Nullable;

/**
 * A policy with its versions and its draft.
 *
 * @param name its name
 * @param versions its versions, the newest first
 * @param draft its draft; null where there is none, or where the bearer may not see it
 * @param sites sites that the bearer may see
 * @param causes causes that a trial may be narrowed to
 * @param mayEdit whether the bearer may write, try and publish
 */
public record PolicyHome(
        String name,
        List<VersionView> versions,
        @Nullable DraftView draft,
        List<Site> sites,
        List<CaseView.Option> causes,
        boolean mayEdit) {}
