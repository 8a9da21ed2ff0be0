package org.axlecause.pages;

import static io.restassured.RestAssured.given;

import io.restassured.http.ContentType;
import io.restassured.http.Cookie;
import io.restassured.http.Cookies;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;

/** Reads pages and sends their forms as a browser without scripts does; keeps its cookies. */
final class Browser {

    static final String HTML = "text/html,application/xhtml+xml,*/*;q=0.8";

    private final Map<String, Cookie> cookies = new LinkedHashMap<>();
    private Response last;

    /** Opens a page, without following where it sends us. */
    Response open(String address) {
        return kept(request().get(address));
    }

    /** The page at this address. */
    Document page(String address) {
        return read(open(address));
    }

    /** Sends a form with some of its fields filled in otherwise, without following where it sends us. */
    Response submit(Element form, Map<String, String> filled) {
        return submit(fields(form, filled), form.attr("action"));
    }

    Response submit(Map<String, String> fields, String action) {
        return kept(request()
                .urlEncodingEnabled(true)
                .contentType(ContentType.URLENC.withCharset("UTF-8"))
                .formParams(fields)
                .post(action));
    }

    /** Sends a form and opens the page that follows. */
    Document follow(Element form, Map<String, String> filled) {
        Response answer = submit(form, filled);
        if (answer.statusCode() != 303) {
            throw new AssertionError(answer.statusCode() + ": " + read(answer).text());
        }
        return page(answer.header("Location").replaceFirst("#.*", ""));
    }

    Response last() {
        return last;
    }

    /** What a browser would send of this form: hidden and chosen values, and what is filled in. */
    static Map<String, String> fields(Element form, Map<String, String> filled) {
        Map<String, String> fields = new LinkedHashMap<>();
        for (Element field : form.select("input, textarea, select")) {
            String type = field.attr("type");
            boolean chosen = (!type.equals("radio") && !type.equals("checkbox")) || field.hasAttr("checked");
            if (chosen && !field.attr("name").isEmpty()) {
                fields.put(field.attr("name"), field.val());
            }
        }
        fields.putAll(filled);
        return fields;
    }

    static Document read(Response answer) {
        return Jsoup.parse(answer.asString(), "http://localhost/");
    }

    private RequestSpecification request() {
        return given().urlEncodingEnabled(false)
                .redirects()
                .follow(false)
                .header("Accept", HTML)
                .cookies(new Cookies(cookies.values().toArray(Cookie[]::new)));
    }

    private Response kept(Response answer) {
        last = answer;
        answer.detailedCookies().forEach(cookie -> {
            if (cookie.getMaxAge() == 0) {
                cookies.remove(cookie.getName());
            } else {
                cookies.put(cookie.getName(), cookie);
            }
        });
        return answer;
    }
}
