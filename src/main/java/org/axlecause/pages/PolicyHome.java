package org.axlecause.pages;

import java.util.List;
import java.util.Map;
import org.axlecause.access.Site;
import org.axlecause.policy.PolicyViews.DraftView;
import org.axlecause.policy.PolicyViews.VersionView;
import org.jspecify.annotations.Nullable;

/**
 * A policy with its versions and its draft.
 *
 * @param name its name
 * @param means what it is for
 * @param versions its versions, the newest first
 * @param draft its draft; null where there is none, or where the bearer may not see it
 * @param sites sites that the bearer may see
 * @param causes causes that a trial may be narrowed to
 * @param mayEdit whether the bearer may write, try and publish
 * @param keyNames names of those who wrote and published, by the ids of their keys
 */
public record PolicyHome(
        String name,
        String means,
        List<VersionView> versions,
        @Nullable DraftView draft,
        List<Site> sites,
        List<CaseView.Option> causes,
        boolean mayEdit,
        Map<String, String> keyNames) {

    /** What people call the bearer of a key. */
    public String called(String key) {
        return keyNames.getOrDefault(key, key);
    }

    /** The name of a site. */
    public String nameOf(String code) {
        return sites.stream()
                .filter(site -> site.site().equals(code))
                .map(Site::name)
                .findFirst()
                .orElse(code);
    }
}
