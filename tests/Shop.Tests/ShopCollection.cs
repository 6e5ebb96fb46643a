using Xunit;

namespace LoggerBox.Shop.Tests;

/// <summary>All tests of pages share one shop and one browser.</summary>
[CollectionDefinition(Name)]
public sealed class ShopCollection : ICollectionFixture<OpenShop>, ICollectionFixture<Browser>
{
    public const string Name = "shop";
}
