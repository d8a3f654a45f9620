using System.Net;

namespace HealthNotes.EndToEnd.Web;

/// <summary><c>hnote web</c> answers the browser that came by its address, and nobody else.</summary>
public class WebServerTests
{
    [SkippableTheory]
    [InlineData("", "", "", true)]
    [InlineData("Origin", "ORIGIN", "", true)]
    [InlineData("Sec-Fetch-Site", "same-origin", "", true)]
    [InlineData("Origin", "https://elsewhere.example", "", false)]
    [InlineData("Origin", "null", "", false)]
    [InlineData("Sec-Fetch-Site", "cross-site", "", false)]
    [InlineData("Host", "elsewhere.example", "", false)] // a name that was pointed at this computer
    [InlineData("", "", "no-cookie", false)]
    [InlineData("", "", "POST", false)]
    public async Task Only_its_own_page_is_answered(string header, string value, string how, bool answered)
    {
        using WebEditor editor = await WebEditor.StartAsync();
        using var handler = new HttpClientHandler { CookieContainer = new CookieContainer(), UseCookies = true };
        using var client = new HttpClient(handler);
        if (how != "no-cookie")
        {
            Assert.Equal(HttpStatusCode.OK, (await client.GetAsync(editor.Address)).StatusCode);
        }

        using var request = new HttpRequestMessage(how == "POST" ? HttpMethod.Post : HttpMethod.Get, editor.Origin + "/main.js");
        if (header.Length > 0)
        {
            request.Headers.TryAddWithoutValidation(header, value.Replace("ORIGIN", editor.Origin, StringComparison.Ordinal));
        }

        using HttpResponseMessage response = await client.SendAsync(request);
        Assert.Equal(answered, response.IsSuccessStatusCode);
        Assert.Equal(answered, (await response.Content.ReadAsStringAsync()).Length > 10_000);
    }

    [SkippableTheory]
    [InlineData("/../hnote.dll", HttpStatusCode.NotFound)]
    [InlineData("/%2e%2e/hnote.dll", HttpStatusCode.NotFound)]
    [InlineData("/_framework", HttpStatusCode.NotFound)]
    [InlineData("/_framework/dotnet.native.wasm", HttpStatusCode.OK)]
    public async Task Only_its_own_files_are_given(string path, HttpStatusCode code)
    {
        using WebEditor editor = await WebEditor.StartAsync();
        using var client = new HttpClient();
        await client.GetAsync(editor.Address);
        using HttpResponseMessage response = await client.GetAsync(editor.Origin + path);
        Assert.Equal(code, response.StatusCode);
        Assert.True(code != HttpStatusCode.OK || response.Content.Headers.ContentType?.MediaType == "application/wasm");
    }
}
